using System;
using System.IO;
using System.Threading;
using InscriptionLab.App.Reports;
using InscriptionLab.Cataloguing;
using InscriptionLab.Exchange;
using InscriptionLab.Outcomes;

namespace InscriptionLab.App.Cataloguing;

/// <summary>Hands the catalogue on in the forms of others, and builds data sets from it.</summary>
/// <param name="address">File or connection string.</param>
/// <param name="output">The screen.</param>
/// <param name="clock">The clock.</param>
internal sealed class ExchangeReport(string address, TextWriter output, TimeProvider clock)
{
    /// <summary>Where things are said to be published if the user does not say: a name that nobody can own (RFC 2606).</summary>
    internal const string NowhereAddress = "https://catalogue.example/";

    private readonly Catalogue _catalogue = Catalogue.OpenExisting(address, clock);

    /// <summary>Writes one form.</summary>
    internal void Export(string format, string? objectKey, string folder, string baseAddress, string? licence, CancellationToken cancel)
    {
        if (!Uri.TryCreate(baseAddress, UriKind.Absolute, out var address) || address.Scheme is not ("http" or "https") || !baseAddress.EndsWith('/'))
        {
            throw new InscriptionLabException($"The address {baseAddress} is not understood: write one like {NowhereAddress} that begins with https:// and ends with a slash.");
        }

        var count = new ExchangeFolder(_catalogue, clock).WriteAsync(new ExchangeRequest(format, objectKey, folder, address, licence), cancel).GetAwaiter().GetResult();
        output.WriteLine($"{Figures.Counted(count, "object", "objects")} written to {folder}");
    }

    /// <summary>Builds a data set.</summary>
    internal void Dataset(string folder, string? licence, int seed, CancellationToken cancel)
    {
        var built = new DatasetFolder(_catalogue, clock).Write(new DatasetRequest(folder, licence, seed), null, cancel);
        output.WriteLine($"{built.Marks} lines with {built.Letters} letters written to {folder}");
        foreach (var warning in built.Warnings)
        {
            output.WriteLine(warning);
        }
    }
}
