using InscriptionLab.Assess.Findings;
using InscriptionLab.Comparison;
using InscriptionLab.Findings;
using InscriptionLab.Measures;
using InscriptionLab.References;
using Xunit;

namespace InscriptionLab.App.Tests.Assessing;

/// <summary>What counts as a misspelling named with its letters, each case worked out by eye.</summary>
public sealed class NamedSpellingTests
{
    private static readonly ReferenceForm Form = new("Tolliver", "Tolliver", AttestationStatus.Attested);

    [Fact]
    public void Only_letters_that_the_photo_speaks_against_are_put_in_place()
    {
        Assert.Equal("Tollivor", Spelt(At(6, "e", "o", -2.1, DifferenceKind.Replaced), At(1, "o", "c", -1.9, DifferenceKind.Replaced)));
        Assert.Equal("Toliver", Spelt(At(2, "l", "", -3, DifferenceKind.Missing)));
        Assert.Equal("Tolliverr", Spelt(At(8, "", "r", -3, DifferenceKind.Added)));
        Assert.Equal("Tlolliver", Spelt(At(1, "", "l", -3, DifferenceKind.Added)));
        Assert.Equal("Tloliver", Spelt(At(1, "o", "l", -3, DifferenceKind.Swapped), At(2, "l", "o", -3, DifferenceKind.Swapped)));
    }

    [Theory]
    [InlineData(FindingOutcome.Differs, "Tolliver", "TOLLIVOR", true)]
    [InlineData(FindingOutcome.Differs, "Tolliver", "Tollivar", false)]
    [InlineData(FindingOutcome.Differs, "Tollivers", "Tollivor", false)]
    [InlineData(FindingOutcome.Undecided, "Tolliver", "Tollivor", false)]
    public void A_case_is_named_only_with_the_right_form_and_the_right_letters(FindingOutcome outcome, string form, string named, bool right) =>
        Assert.Equal(right, new FindingCase("a.jpg", FindingGroup.Misspelt, "Tollivor", "Tolliver", 30, outcome, form, named).IsNamed);

    private static string Spelt(params LetterDifference[] differences) => NamedSpelling.Of(new NearestForm(Form, 0, 1, [.. differences], null));

    private static LetterDifference At(int index, string attested, string read, double log10, DifferenceKind kind) =>
        new(attested, read, Probability.From(0.9), 0, index) { Kind = kind, Log10Ratio = log10, FormIndex = index, Rival = read };
}
