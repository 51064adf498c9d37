using System.Linq;
using InscriptionLab.Assess.Scores;
using InscriptionLab.Assess.Truths;
using Xunit;

namespace InscriptionLab.App.Tests.Assessing;

/// <summary>Outside check: the expected numbers were computed by a separate program in another language (Python) that follows the same definitions.</summary>
public sealed class ScoreTests
{
    private static readonly TruthPhoto Truth = new()
    {
        File = "a.jpg",
        Kind = "tube",
        Lines = ["Thos. Barckwell", "Monteverra"],
        Maker = "Thos. Barckwell",
        IsVariantOf = "Thos. Brackwell",
        Letters =
        [
            new TruthLetter { Char = "T", Line = 0, Index = 0, Visible = true },
            new TruthLetter { Char = "M", Line = 1, Index = 0, Visible = false },
            new TruthLetter { Char = "o", Line = 1, Index = 1, Visible = true, WashedOut = true },
        ],
    };

    [Theory]
    [InlineData("Thos. Barckwell|Monteverra", 0, 0, 0, 3, 2, "Kept")]
    [InlineData("Thos. Brackwell|Monteverra", 2, 2, 2, 2, 1, "Corrected")]
    [InlineData("Thos Barckwel|Montevera", 3, 3, 3, 0, 0, "Misread")]
    [InlineData("THOS. BARCKWELL|??nteverra", 13, 13, 11, 0, 0, "Kept")]
    [InlineData("Thos.Barckwell|nteverra", 3, 2, 0, 0, 0, "Misread")]
    [InlineData("", 26, 24, 22, 0, 0, "Misread")]
    public void Counts_equal_those_of_an_independent_program(string read, int edits, int noSpaces, int visible, int words, int name, string fate)
    {
        var score = TextScorer.Score(Truth, read.Split('|'));

        Assert.Equal((26, 24, 22), (score.Letters, score.LettersNoSpaces, score.LettersVisible));
        Assert.Equal((edits, noSpaces, visible), (score.Edits, score.EditsNoSpaces, score.EditsVisible));
        Assert.Equal((words, name, fate), (score.WordsRight, score.NameWordsRight, score.Variant.ToString()));
    }

    [Fact]
    public void A_patch_overlaps_itself_wholly_and_its_half_by_half()
    {
        (double, double)[] square = [(0, 0), (2, 0), (2, 2), (0, 2)];
        (double, double)[] half = [(0, 0), (0, 2), (1, 2), (1, 0)];
        (double, double)[] away = [(5, 5), (6, 5), (6, 6), (5, 6)];

        Assert.Equal(1, ConvexPatch.Overlap(square, square), 12);
        Assert.Equal(0.5, ConvexPatch.Overlap(square, half), 12);
        Assert.Equal(0, ConvexPatch.Overlap(square, away), 12);
    }

    [Fact]
    public void Two_squares_turned_against_each_other_share_an_octagon()
    {
        // A unit square and the same turned by 45 degrees share a regular octagon of inradius 1/2: area 2 (sqrt 2 - 1).
        const double r = 0.70710678118654757;
        (double, double)[] square = [(-0.5, -0.5), (0.5, -0.5), (0.5, 0.5), (-0.5, 0.5)];
        (double, double)[] turned = [(0, -r), (r, 0), (0, r), (-r, 0)];
        var shared = 2 * (System.Math.Sqrt(2) - 1);

        Assert.Equal(shared / (2 - shared), ConvexPatch.Overlap(square, turned), 12);
    }

    [Fact]
    public void Honest_probabilities_have_no_calibration_error_and_boastful_ones_do()
    {
        (double, bool)[] honest = [(0.75, true), (0.75, true), (0.75, true), (0.75, false)];
        (double, bool)[] boastful = [(0.95, true), (0.95, false)];

        Assert.Equal(0, Calibration.Of(honest)!.ExpectedError, 12);
        Assert.Equal(0.45, Calibration.Of(boastful)!.ExpectedError, 12);
    }

    [Fact]
    public void Leaving_out_unsure_letters_leaves_fewer_wrong_ones()
    {
        (double, bool)[] letters = [(0.995, true), (0.92, true), (0.85, false), (0.3, false)];

        var points = KeptLetters.Of(letters);

        Assert.Equal([(0, 4, 2), (0.5, 3, 1), (0.8, 3, 1), (0.9, 2, 0), (0.95, 1, 0), (0.99, 1, 0)], points.Select(point => (point.From, point.Kept, point.Wrong)));
    }

    [Fact]
    public void Letters_are_paired_in_order()
    {
        Assert.Equal([0, 1, 3], EditDistance.Pairs("abcd", "abd"));
        Assert.Equal([0, -1, 1, 2], EditDistance.Pairs("abc", "axbc"));
        Assert.Equal([0, 1], EditDistance.Pairs("ab", "xb"));
    }
}
