using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using InscriptionLab.Catalogue.Tests.Services;
using Xunit;

namespace InscriptionLab.Catalogue.Tests.Exchange;

/// <summary>The bag, walked through by the RFC and its sums confirmed by sha256sum. No other reader of bags can be had from the package sources at hand.</summary>
public sealed class BagWalkTests : IDisposable
{
    private static readonly Dictionary<string, (Action<string> Spoil, string Named)> Spoilers = new(StringComparer.Ordinal)
    {
        ["a file more"] = (bag => File.WriteAllText(Path.Combine(bag, "data/more.txt"), "more"), "is not listed"),
        ["a file gone"] = (bag => File.Delete(Directory.GetFiles(Path.Combine(bag, "data/lido")).First()), "is not there"),
        ["a byte changed"] = (bag => File.AppendAllText(Directory.GetFiles(Path.Combine(bag, "data/lido")).First(), " "), "has another sum"),
        ["listed twice"] = (bag => File.AppendAllText(Path.Combine(bag, "manifest-sha256.txt"), File.ReadLines(Path.Combine(bag, "manifest-sha256.txt")).First() + "\n"), "is listed twice"),
        ["out of the bag"] = (bag => File.AppendAllText(Path.Combine(bag, "manifest-sha256.txt"), new string('0', 64) + "  data/../../else.txt\n"), "has no business there"),
        ["a wrong count"] = (bag => Replace(bag, "Payload-Oxum: ", "Payload-Oxum: 1"), "Payload-Oxum says"),
        ["a byte-order mark"] = (bag => File.WriteAllBytes(Path.Combine(bag, "bagit.txt"), [0xEF, 0xBB, 0xBF, .. File.ReadAllBytes(Path.Combine(bag, "bagit.txt"))]), "byte-order mark"),
        ["another encoding"] = (bag => File.WriteAllBytes(Path.Combine(bag, "bag-info.txt"), [.. File.ReadAllBytes(Path.Combine(bag, "bag-info.txt")), 0xE9, (byte)'\n']), "is not UTF-8"),
        ["no declaration"] = (bag => File.Delete(Path.Combine(bag, "bagit.txt")), "no declaration"),
        ["metadata changed"] = (bag => Replace(bag, "External-Description: ", "External-Description: A "), "bag-info.txt has another sum"),
    };

    private readonly ExportBench _bench = new();

    public static TheoryData<string> Kinds => [.. Spoilers.Keys];

    public void Dispose() => _bench.Dispose();

    [Fact]
    public async Task The_bag_is_valid_and_sha256sum_confirms_every_sum()
    {
        await _bench.ExportAsync("crate", null);

        Assert.Empty(BagWalk.Faults(_bench.At("crate")));
        foreach (var manifest in new[] { "manifest-sha256.txt", "tagmanifest-sha256.txt" })
        {
            Assert.Equal((0, string.Empty), ChildProcess.Output("/bin/sh", "-c", $"cd '{_bench.At("crate")}' && sha256sum --check --strict --quiet {manifest}"));
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task A_spoilt_bag_is_found_out(string kind)
    {
        await _bench.ExportAsync("crate", null);
        var (spoil, named) = Spoilers[kind];

        spoil(_bench.At("crate"));

        Assert.Contains(BagWalk.Faults(_bench.At("crate")), fault => fault.Contains(named, StringComparison.Ordinal));
    }

    private static void Replace(string bag, string old, string with)
    {
        var file = Path.Combine(bag, "bag-info.txt");
        File.WriteAllText(file, File.ReadAllText(file).Replace(old, with, StringComparison.Ordinal));
    }
}
