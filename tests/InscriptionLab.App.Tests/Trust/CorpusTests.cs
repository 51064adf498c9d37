using System;
using System.IO;
using System.Linq;
using InscriptionLab.Fuzz;
using Xunit;

namespace InscriptionLab.App.Tests.Trust;

/// <summary>Inputs that once brought down a parser, and what the search for others starts from: every one is taken or refused with a sentence.</summary>
public sealed class CorpusTests
{
    private static readonly string Corpus = Path.Combine(AppContext.BaseDirectory, "Corpus");

    public static TheoryData<string> Names => [.. Targets.All.Keys.Order(StringComparer.Ordinal)];

    public static TheoryData<string, string> Kept =>
        [.. Directory.GetFiles(Corpus, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(file => (Path.GetFileName(Path.GetDirectoryName(file)!), Path.GetFileName(file)))];

    [Theory]
    [MemberData(nameof(Kept))]
    public void What_was_found_once_is_refused_with_a_sentence(string target, string file) => Trial.Run(Targets.All[target], File.ReadAllBytes(Path.Combine(Corpus, target, file)));

    [Theory]
    [MemberData(nameof(Names))]
    public void Sound_inputs_are_taken_and_cut_ones_cost_no_crash(string target)
    {
        var seeds = Seeds.Of(target).ToList();
        Assert.NotEmpty(seeds);
        foreach (var seed in seeds)
        {
            if (target != "photo-header")
            {
                Assert.Null(Trial.Run(Targets.All[target], seed));
            }

            for (var length = 0; length < seed.Length; length += Math.Max(1, seed.Length / 40))
            {
                Trial.Run(Targets.All[target], seed[..length]);
            }
        }
    }
}
