using System;
using System.IO;
using System.Text.Json;
using Xunit;

namespace InscriptionLab.App.Tests.Cli;

/// <summary>What is read does not depend on what is known: the reader never sees the reference list.</summary>
public sealed class NeverCorrectedTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void The_reading_is_the_same_to_the_last_digit_whichever_list_is_loaded()
    {
        var empty = LinesWith("form,maker,status\n");
        Assert.Contains("Pellowic\"", empty, StringComparison.Ordinal);
        Assert.Equal(empty, LinesWith("form,maker,status\nPellowick,Pellowick,attested\n"));
        Assert.Equal(empty, LinesWith(null));
    }

    /// <summary>Gives the "lines" of the record, letters, probabilities and quads, as they were written.</summary>
    private string LinesWith(string? list)
    {
        var file = _folder.File("list.csv");
        File.WriteAllText(file, list ?? string.Empty);
        string[] reference = list is null ? [] : ["--reference", file];
        var run = ProgramRun.Of(["examine", SampleImages.PathOf(SampleImages.Script), .. reference, "--out", _folder.File("out"), "--json", _folder.File("out.jsonl")]);
        Assert.Equal(0, run.Code);
        using var record = JsonDocument.Parse(File.ReadAllText(_folder.File("out.jsonl")));
        return record.RootElement.GetProperty("lines").GetRawText();
    }
}
