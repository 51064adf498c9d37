using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using InscriptionLab.Assess;
using Xunit;

namespace InscriptionLab.App.Tests.Trust;

/// <summary>
/// The program itself, as a user starts it, on two samples: the same photos give the same record to the last digit, whatever the number of processors,
/// the language of the system, the time zone, and what else is examined at the time; and the record that it gave when the golden records were last renewed.
/// </summary>
public sealed class SameEveryTimeTests : IDisposable
{
    private static readonly string[] Names = [SampleImages.RomanTransposed, SampleImages.Script];

    private static readonly Dictionary<string, string> Elsewhere = new()
    {
        ["LANG"] = "tr_TR.UTF-8",
        ["LC_ALL"] = "de_DE.UTF-8",
        ["TZ"] = "Pacific/Auckland",
        ["OMP_THREAD_LIMIT"] = "2",
    };

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task The_same_photos_give_the_same_record_everywhere()
    {
        var plain = await Lines("plain", [], []);
        Assert.Equal(Names.Length, plain.Length);
        Assert.Equal(plain, await Lines("one-processor", ["taskset", "-c", "0"], []));
        Assert.Equal(plain, await Lines("elsewhere", [], Elsewhere));
        var beside = await Task.WhenAll(Lines("beside", [], []), Lines("other", [], []));
        Assert.All(beside, lines => Assert.Equal(plain, lines));
        var golden = Golden();
        Assert.Empty(GoldenRecords.Differences(Names.Select(name => golden.Single(line => line.Contains(name, StringComparison.Ordinal))), plain));
    }

    [Fact]
    public void A_golden_record_notices_a_letter_and_a_number()
    {
        var line = Golden()[0];
        Assert.Empty(GoldenRecords.Differences([line], [line]));
        Assert.NotEmpty(GoldenRecords.Differences([line], [line.Replace("\"outcome\":\"", "\"outcome\":\"x", StringComparison.Ordinal)]));
        Assert.NotEmpty(GoldenRecords.Differences(["{\"file\":\"a\",\"x\":0.5}"], ["{\"file\":\"a\",\"x\":0.501}"]));
        Assert.Empty(GoldenRecords.Differences(["{\"file\":\"a\",\"x\":0.5}"], ["{\"file\":\"a\",\"x\":0.50001}"]));
        Assert.NotEmpty(GoldenRecords.Differences([line], []));
    }

    /// <summary>The records of all samples, photos alone (a set names several files).</summary>
    private static string[] Golden() =>
        [.. File.ReadLines(Path.Combine(SampleImages.Root, "tests", "InscriptionLab.App.Tests", "Trust", "golden.jsonl")).Where(line => line.StartsWith("{\"file\":", StringComparison.Ordinal))];

    private async Task<string[]> Lines(string name, string[] before, Dictionary<string, string> surroundings)
    {
        string[] words =
        [
            .. before, Path.Combine(AppContext.BaseDirectory, "inscriptionlab"), "examine", .. Names.Select(photo => Path.Combine("sample-images", photo)),
            "--as", "separate", "--out", _folder.File(name), "--json", _folder.File(name + ".jsonl"),
        ];
        var start = new ProcessStartInfo(words[0], words[1..]) { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = SampleImages.Root };
        foreach (var (variable, value) in surroundings)
        {
            start.Environment[variable] = value;
        }

        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == 0, await errors);
        return File.ReadAllLines(_folder.File(name + ".jsonl"));
    }
}
