using System;
using CsCheck;
using InscriptionLab.Comparison;
using Xunit;

namespace InscriptionLab.Core.Tests.Comparison;

public sealed class StringDistancesTests
{
    private static readonly Gen<string> Word = Gen.String[Gen.Char["abcl "], 0, 9];

    /// <summary>
    /// Textbook pairs: kitten/sitting and Saturday/Sunday (Wagner and Fischer's algorithm as taught everywhere), intention/execution (Jurafsky and
    /// Martin, Speech and Language Processing, minimum edit distance with unit costs), CA/ABC (the pair that parts optimal string alignment, 3,
    /// from Damerau-Levenshtein, 2). The library agrees with all of them.
    /// </summary>
    [Theory]
    [InlineData("kitten", "sitting", 3, 3, 3)]
    [InlineData("Saturday", "Sunday", 3, 3, 3)]
    [InlineData("intention", "execution", 5, 5, 5)]
    [InlineData("CA", "ABC", 3, 3, 2)]
    [InlineData("LONDON", "LODNON", 2, 1, 1)]
    [InlineData("", "LONDON", 6, 6, 6)]
    public void Edit_distances_are_the_published_ones(string first, string second, int levenshtein, int alignment, int damerau)
    {
        Assert.Equal(levenshtein, StringDistances.Levenshtein(first, second));
        Assert.Equal(alignment, StringDistances.OptimalStringAlignment(first, second));
        Assert.Equal(damerau, StringDistances.DamerauLevenshtein(first, second));
    }

    /// <summary>
    /// W. Winkler, String Comparator Metrics (US Bureau of the Census, 1990 and later reports): table of pairs, prefix scale 0.1.
    /// The library agrees with all of them to the six digits given.
    /// </summary>
    [Theory]
    [InlineData("MARTHA", "MARHTA", 0.961111)]
    [InlineData("DIXON", "DICKSONX", 0.813333)]
    [InlineData("DWAYNE", "DUANE", 0.840000)]
    [InlineData("JONES", "JOHNSON", 0.832381)]
    [InlineData("JELLYFISH", "SMELLYFISH", 0.896296)]
    public void Jaro_Winkler_similarities_are_the_published_ones(string first, string second, double similarity)
    {
        Assert.Equal(similarity, StringDistances.JaroWinkler(first, second), 6);
        Assert.Equal(similarity, StringDistances.JaroWinkler(second, first), 6);
    }

    /// <summary>
    /// Where the library leaves the published definition: Winkler counts a common prefix of at most four letters with a scale of 0.1; the
    /// library counts all of it (ten letters here) with a scale of 0.1 or one over the longer length, whichever is less. Winkler's value for
    /// this pair would be 0.963636. The similarity only orders candidates of equal edit distance, so that the departure decides nothing.
    /// </summary>
    [Fact]
    public void For_a_long_common_prefix_the_library_goes_above_Winkler()
    {
        const double Jaro = ((10.0 / 11) + (10.0 / 11) + 1) / 3;

        Assert.Equal(0.963636, Jaro + (4 * 0.1 * (1 - Jaro)), 6);
        Assert.Equal(Jaro + (10 * (1.0 / 11) * (1 - Jaro)), StringDistances.JaroWinkler("HATHERSEDGE", "HATHERSEDGA"), 6);
    }

    [Fact]
    public void Levenshtein_and_Damerau_are_metrics() =>
        Gen.Select(Word, Word, Word).Sample(words =>
        {
            var (a, b, c) = words;
            Assert.All([StringDistances.Levenshtein, StringDistances.DamerauLevenshtein], (Func<string, string, int> distance) =>
            {
                Assert.Equal(a == b, distance(a, b) == 0);
                Assert.Equal(distance(a, b), distance(b, a));
                Assert.True(distance(a, c) <= distance(a, b) + distance(b, c));
            });
        });
}
