using System;
using F23.StringSimilarity;

namespace InscriptionLab.Comparison;

/// <summary>Published distances between plain strings, UTF-16 unit by unit. They find candidates; what is reported is weighed letter by letter.</summary>
public static class StringDistances
{
    private static readonly Levenshtein PlainLevenshtein = new();
    private static readonly F23.StringSimilarity.OptimalStringAlignment Osa = new();
    private static readonly Damerau FullDamerau = new();
    private static readonly F23.StringSimilarity.JaroWinkler Winkler = new();

    /// <summary>Gives the least number of letters replaced, added or left out (V. Levenshtein, 1966).</summary>
    public static int Levenshtein(string first, string second) => Whole(PlainLevenshtein.Distance(first, second));

    /// <summary>Gives the same with two neighbours swapped as one step, no part edited twice (optimal string alignment). Not a metric.</summary>
    public static int OptimalStringAlignment(string first, string second) => Whole(Osa.Distance(first, second));

    /// <summary>Gives the same with swapped neighbours as one step without that restriction (F. Damerau, 1964). A metric.</summary>
    public static int DamerauLevenshtein(string first, string second) => Whole(FullDamerau.Distance(first, second));

    /// <summary>Gives the similarity of Jaro and Winkler (W. Winkler, 1990; prefix scale 0.1, applied above 0.7), 1 for equal strings.</summary>
    public static double JaroWinkler(string first, string second) => Winkler.Similarity(first, second);

    private static int Whole(double distance) => (int)Math.Round(distance, MidpointRounding.AwayFromZero);
}
