using System;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using InscriptionLab.Catalogue.Tests.Cataloguing;
using InscriptionLab.Cataloguing;
using InscriptionLab.Exchange;
using Xunit;
using Cat = InscriptionLab.Cataloguing.Catalogue;

namespace InscriptionLab.Catalogue.Tests.Exchange;

/// <summary>A catalogue of two objects with hard names, hard letters, a measurement and a correction, and its exports.</summary>
internal sealed class ExportBench : IDisposable
{
    /// <summary>Name of the object that has everything.</summary>
    internal const string Key = "tube 1/\u00E9";

    private readonly Scratch _scratch = new();

    internal ExportBench()
    {
        Catalogue = Cat.Open(At("catalogue.db"), TimeProvider.System);
        Catalogue.Intake.Add(Entries.Of("photos/a.jpg", "Tobias Br?ckwell\nLondon & <Co> \u0001", "differs", key: Key), "tester");
        Catalogue.Intake.Add(Entries.Measured("b.png", Key, 39.873215, 0.0712), "tester");
        Catalogue.Intake.Add(Entries.Of("c.jpg", "Jos. Penfold", key: "tube-2"), "tester");
        Catalogue.Desk.Correct(1, 0, "Tobias Brockwell", "A. Cataloguer", "Seen under raking light.");
        Catalogue.Desk.Observe(
            Key,
            [
                new ObservationEntry("tube_material", "pasteboard", null, 1790, "common practice: a handbook", "A. Cataloguer", DateTimeOffset.UnixEpoch),
                new ObservationEntry("outer_mm", "38.2", null, null, string.Empty, "B. <Cataloguer>", DateTimeOffset.UnixEpoch),
            ],
            [],
            "tester");
    }

    internal Cat Catalogue { get; }

    public void Dispose() => _scratch.Dispose();

    internal string At(params ReadOnlySpan<string> parts) => _scratch.At(parts);

    /// <summary>Writes one form into the folder of its name.</summary>
    internal Task<int> ExportAsync(string format, string? key) => new ExchangeFolder(Catalogue, TimeProvider.System)
        .WriteAsync(new ExchangeRequest(format, key, At(format), new Uri("https://brackhaven.example/"), "CC0-1.0"), TestContext.Current.CancellationToken);

    /// <summary>Writes one form of the object that has everything and gives its only file.</summary>
    internal async Task<string> OneAsync(string format, string ending)
    {
        Assert.Equal(1, await ExportAsync(format, Key));
        var file = Directory.GetFiles(At(format)).Single();
        Assert.EndsWith(ending, file, StringComparison.Ordinal);
        return file;
    }
}
