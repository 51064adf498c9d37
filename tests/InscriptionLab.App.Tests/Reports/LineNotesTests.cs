using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.App.Reports;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using Xunit;

namespace InscriptionLab.App.Tests.Reports;

public sealed class LineNotesTests
{
    [Fact]
    public void A_sure_line_with_no_second_reader_needs_no_note() =>
        Assert.Empty(LineNotes.Of(Line(("o", 0.99), ("n", 0.97)), 0, []));

    [Fact]
    public void An_unclear_letter_is_dotted_and_a_lost_one_is_a_dot() =>
        Assert.Equal([("Leiden", "o\u0323n.")], LineNotes.Of(Line(("o", 0.6), ("n", 0.97), ("?", 0.1)), 0, []));

    [Fact]
    public void The_second_reader_is_quoted_and_changes_nothing()
    {
        var line = Line(("o", 0.99), ("n", 0.97));
        var note = Assert.Single(LineNotes.Of(line with { Second = SecondReading.Beside(line.Letters, "Other", "an") }, 0, []));
        Assert.Equal("second", note.Name);
        Assert.Contains("Other reads 'an': the same as the first reader in 1 of 2 letters.", note.Sentence, System.StringComparison.Ordinal);
    }

    private static LineReading Line(params (string Character, double Probability)[] letters) => new(
        null!,
        [.. letters.Select(letter => new Letter(letter.Character, Probability.From(letter.Probability), ImmutableArray<LetterCandidate>.Empty, default, default))],
        Probability.One,
        null);
}
