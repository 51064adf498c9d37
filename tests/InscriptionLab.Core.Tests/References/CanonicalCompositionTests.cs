using System.Linq;
using CsCheck;
using InscriptionLab.References;
using Xunit;

namespace InscriptionLab.Core.Tests.References;

public sealed class CanonicalCompositionTests
{
    /// <summary>Unicode Standard Annex 15 (figures 3 to 5 and table 1) and Python's unicodedata 14.0 for the rest.</summary>
    [Theory]
    [InlineData("A\u0300", "\u00C0")]
    [InlineData("\u212B", "\u00C5")]
    [InlineData("\u1E9B\u0323", "\u1E9B\u0323")]
    [InlineData("\u1E0A\u0323", "\u1E0C\u0307")]
    [InlineData("s\u0323\u0307", "\u1E69")]
    [InlineData("s\u0307\u0323", "\u1E69")]
    [InlineData("C\u0323", "C\u0323")]
    [InlineData("o\u0302\u0301", "\u1ED1")]
    [InlineData("o\u0301\u0302", "\u00F3\u0302")]
    [InlineData("\u0300A", "\u0300A")]
    [InlineData("u\u0308\u0304\u0304", "\u01D6\u0304")]
    [InlineData("a\u0334\u0301", "\u00E1\u0334")]
    [InlineData("\u0341e\u0341", "\u0301\u00E9")]
    [InlineData("\uFB01 \u017F \u00BD", "\uFB01 \u017F \u00BD")]
    public void Composes_as_the_unicode_standard_says(string text, string composed) => Assert.Equal(composed, CanonicalComposition.Compose(text));

    [Fact]
    public void Composing_twice_changes_nothing_more() =>
        Gen.String[Gen.Char["aAeEoOuU sSdD\u00C4\u1EA4\u01D5\u1E69\u0300\u0301\u0302\u0304\u0307\u0308\u031B\u0323\u0327\u0334\u0345"], 0, 12].Sample(
            text => CanonicalComposition.Compose(text) is var once && CanonicalComposition.Compose(once) == once);

    [Fact]
    public void Plain_letters_stay_as_they_are() =>
        Gen.String[Gen.Char[' ', '~'], 0, 40].Sample(text => CanonicalComposition.Compose(text).SequenceEqual(text));
}
