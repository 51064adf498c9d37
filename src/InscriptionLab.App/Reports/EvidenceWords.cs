using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Evidence;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports;

/// <summary>Words of the weighing that screen, page and folder share.</summary>
internal static class EvidenceWords
{
    /// <summary>Gets the three propositions, each with its letter.</summary>
    internal static ImmutableArray<string> Propositions { get; } = [.. Enum.GetValues<Proposition>().Select(proposition => $"{LetterOf(proposition)}: {EvidenceSentences.Words(proposition)}")];

    /// <summary>Gives the short name of a pair: "H:P".</summary>
    internal static string NameOf(PairRatio ratio) => $"{LetterOf(ratio.First)}:{LetterOf(ratio.Second)}";

    /// <summary>Gives a ratio as a number to one: "3.0", "1/12".</summary>
    internal static string ValueOf(PairRatio ratio)
    {
        var times = Math.Pow(10, Math.Abs(ratio.Log10Ratio));
        var number = times < 10 ? Invariant($"{times:0.0}") : Invariant($"{times:0}");
        return ratio.Log10Ratio >= 0 || number == "1.0" ? number : "1/" + number;
    }

    internal static string ValuesOf(IEnumerable<PairRatio> ratios) => string.Join(", ", ratios.Select(ratio => $"{NameOf(ratio)} {ValueOf(ratio)}"));

    private static char LetterOf(Proposition proposition) => proposition switch
    {
        Proposition.House => 'H',
        Proposition.PeriodOther => 'P',
        _ => 'M',
    };
}
