using System;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Core.Tests.Comparison;
using InscriptionLab.Findings;
using InscriptionLab.Readings;
using InscriptionLab.References;
using Xunit;

namespace InscriptionLab.Core.Tests.Findings;

public sealed class JudgeTests
{
    private static readonly ReferenceList Houses = Fabricated
        .List("Tolliver", "Thos. Brackwell", "THOS. BRACKWELL", "Wm. Hathersedge", "CALDERWYN & CO", "Fennimarch", "Merrowby", "Merrowby & Son", "Harwick & Penhale", "Kesselbrandt", "Pellowick")
        .Plus("Finnimarch", AttestationStatus.PeriodCopy)
        .Plus("THOS. BRACKWELL LONDON 1785", AttestationStatus.Reproduction);

    private static Finding Finding(Reading reading, ReferenceList? list = null) => new Judge().Decide(new Comparer(list ?? Houses).Compare(reading));

    private static string All(Finding finding) => string.Join('\n', [.. finding.Reasons, .. finding.CannotDecide, .. finding.Retake, .. finding.Cautions]);

    [Theory]
    [InlineData("Tolliver")]
    [InlineData("TOLLIVER")]
    [InlineData("calderwyn & co")]
    [InlineData("Wm. Hathersedge LONDON")]
    [InlineData("WM. HATHERSEDGE LONDON")]
    [InlineData("Wm Hathersedge")]
    [InlineData("Thos. Brackwell|Marlhaven")]
    [InlineData("Harwick &|Penhale")]
    [InlineData("No. 1409|Improved|Pellowick, Port Tressick")]
    [InlineData("Kessel brandt")]
    [InlineData("Hatherſedge Wᵐ.|Wᵐ. Hatherſedge")]
    public void An_attested_spelling_read_well_agrees(string lines)
    {
        var finding = Finding(Fabricated.Reading(lines.Split('|')));

        Assert.Equal(FindingOutcome.Agrees, finding.Outcome);
        Assert.Empty(finding.Nearest[0].SpellingDifferences);
    }

    [Theory]
    [InlineData("Tolliveer", "'e' is cut, which the form does not have")]
    [InlineData("Tloliver", "Letters 2 and 3 of line 1: the form has 'ol', cut is 'lo'")]
    [InlineData("Pellowic", "Before letter 9 of line 1: the form has 'k', which is not cut")]
    [InlineData("Thos. Barckwell", "Letters 8 and 9 of line 1: the form has 'ra', cut is 'ar'")]
    [InlineData("CALDERWYNN & CO LONDON", "Letter 10 of line 1: 'N' is cut")]
    [InlineData("Wm. Hathersedtge LONDON", "Letter 14 of line 1: 't' is cut")]
    [InlineData("Merrowby & Sons", "Letter 15 of line 1: 's' is cut")]
    [InlineData("Harwick &|Penhble", "Letter 5 of line 2: the form has 'a', cut is 'b'")]
    [InlineData("14 Tolliver Street|Kesselbarndt", "Letters 8 and 9 of line 2: the form has 'ra', cut is 'ar'")]
    [InlineData("Pellowik", "the form has 'c', which is not cut")]
    [InlineData("Fennimarcch", "'c' is cut, which the form does not have")]
    public void Another_spelling_read_well_differs_and_names_the_letter(string lines, string letter)
    {
        var finding = Finding(Fabricated.Reading(lines.Split('|')));

        Assert.Equal(FindingOutcome.Differs, finding.Outcome);
        Assert.Contains(finding.Reasons, reason => reason.Contains(letter, StringComparison.Ordinal));
        Assert.Contains(finding.CannotDecide, sentence => sentence.StartsWith("Why the spelling differs", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_letter_of_every_form_replaced_differs_where_sure_and_is_undecided_where_even()
    {
        var tried = 0;
        foreach (var form in Houses.Forms.Where(form => form.Status == AttestationStatus.Attested).Select(form => form.Form))
        {
            foreach (var index in Enumerable.Range(0, form.Length).Where(index => char.IsLetter(form[index])))
            {
                var other = char.IsUpper(form[index]) ? "X" : "z";
                var read = form[..index] + other + form[(index + 1)..];
                var sure = Finding(Fabricated.Reading(read));
                var even = Finding(Fabricated.Of(Fabricated.Line(read).With(index, 0.5, (form[index..(index + 1)], 0.5))));

                Assert.Equal((read, FindingOutcome.Differs), (read, sure.Outcome));
                var difference = Assert.Single(sure.Nearest[0].SpellingDifferences);
                Assert.Equal((form[index..(index + 1)].ToUpperInvariant(), other.ToUpperInvariant(), index), (difference.Attested.ToUpperInvariant(), difference.Read.ToUpperInvariant(), difference.LetterIndex));
                Assert.Equal((read, FindingOutcome.Undecided), (read, even.Outcome));
                Assert.Contains(even.CannotDecide, sentence => sentence.Contains(FormattableString.Invariant($"etter {index + 1} of line 1: '{other}' as read"), StringComparison.Ordinal));
                tried++;
            }
        }

        Assert.Equal(122, tried);
    }

    [Fact]
    public void Every_letter_left_out_doubled_or_swapped_with_the_next_differs_but_a_first_letter_left_out()
    {
        var tried = 0;
        foreach (var form in Houses.Forms.Where(form => form.Status == AttestationStatus.Attested).Select(form => form.Form))
        {
            foreach (var index in Enumerable.Range(0, form.Length).Where(index => char.IsLetter(form[index])))
            {
                var next = index + 1 < form.Length && char.IsLetter(form[index + 1]) ? form[index + 1] : form[index];
                string[] spellings =
                [
                    form.Remove(index, 1),
                    form.Insert(index, form[index..(index + 1)]),
                    char.ToUpperInvariant(next) == char.ToUpperInvariant(form[index]) ? string.Empty : $"{form[..index]}{next}{form[index]}{form[(index + 2)..]}",
                ];
                foreach (var read in spellings.Where(read => read.Length > 0))
                {
                    // A first letter of a line may have been cut off by the box.
                    var expected = index == 0 && read == spellings[0] ? FindingOutcome.Undecided : FindingOutcome.Differs;

                    Assert.Equal((read, expected), (read, Finding(Fabricated.Reading(read)).Outcome));
                    tried++;
                }
            }
        }

        // 122 letters left out, as many doubled, and the pairs of neighbours in a word that are not alike.
        Assert.Equal(122 + 122 + 97, tried);
    }

    [Fact]
    public void Every_letter_of_every_form_in_doubt_is_undecided_even_where_the_attested_one_is_read()
    {
        foreach (var form in Houses.Forms.Where(form => form.Status == AttestationStatus.Attested).Select(form => form.Form))
        {
            foreach (var index in Enumerable.Range(0, form.Length).Where(index => char.IsLetter(form[index])))
            {
                var finding = Finding(Fabricated.Of(Fabricated.Line(form).With(index, 0.6, ("z", 0.4))));

                Assert.Equal((form, index, FindingOutcome.Undecided), (form, index, finding.Outcome));
                Assert.NotEmpty(finding.Retake);
            }
        }
    }

    [Theory]
    [InlineData(0.99, FindingOutcome.Differs)]
    [InlineData(0.98, FindingOutcome.Undecided)]
    [InlineData(0.5, FindingOutcome.Undecided)]
    public void A_letter_differs_from_a_ratio_of_a_hundred_on(double probability, FindingOutcome outcome)
    {
        // The letter read holds p, the attested one what is left: 99 to 1 is just under a hundred, half of the rest unlisted just over it.
        var line = Fabricated.Line("Tollivor").With(6, probability);

        Assert.Equal(outcome, Finding(Fabricated.Of(line)).Outcome);
    }

    [Theory]
    [InlineData("Toll?ver")]
    [InlineData("?olliver")]
    [InlineData("To??iver")]
    public void Letters_that_cannot_be_read_leave_the_form_open(string text)
    {
        var letters = Fabricated.Clusters(text).Select(letter => Fabricated.Letter(letter, letter == "?" ? 0.1 : Fabricated.Sure)).ToArray();
        var finding = Finding(Fabricated.Of(Fabricated.Line([.. letters])));

        Assert.Equal(FindingOutcome.Undecided, finding.Outcome);
        Assert.Contains(finding.CannotDecide, sentence => sentence.Contains("cannot be read; the form has", StringComparison.Ordinal));
        Assert.Contains(finding.Retake, sentence => sentence.StartsWith("Photograph letter", StringComparison.Ordinal));
    }

    [Fact]
    public void A_sure_difference_beside_an_unreadable_letter_still_differs_and_says_what_is_open()
    {
        var letters = Fabricated.Clusters("T?llivor").Select(letter => Fabricated.Letter(letter, letter == "?" ? 0 : Fabricated.Sure)).ToArray();
        var finding = Finding(Fabricated.Of(Fabricated.Line([.. letters])));

        Assert.Equal(FindingOutcome.Differs, finding.Outcome);
        Assert.Contains(finding.CannotDecide, sentence => sentence.StartsWith("Letter 2 of line 1: cannot be read", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("qzx vvkk wj")]
    [InlineData("MAKER TO THE NAVY")]
    [InlineData("Day or Night")]
    [InlineData("No. 650")]
    [InlineData("Monteverra")]
    public void Lettering_near_no_form_is_undecided_and_says_so(string line)
    {
        var finding = Finding(Fabricated.Reading(line));

        Assert.Equal(FindingOutcome.Undecided, finding.Outcome);
        Assert.Contains(finding.Reasons, reason => reason.StartsWith("No form in the list is near", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("")]
    [InlineData(" ")]
    [InlineData("|")]
    public void A_blank_piece_is_nothing_read(string lines)
    {
        var finding = Finding(Fabricated.Reading(lines.Split('|')));

        Assert.Equal(FindingOutcome.NothingRead, finding.Outcome);
        Assert.Equal(["No lettering was read in this photo."], finding.Reasons.ToArray());
        Assert.Empty(finding.Nearest);
    }

    [Fact]
    public void Traces_of_which_no_letter_can_be_read_are_nothing_read()
    {
        var finding = Finding(Fabricated.Reading("??? ??"));

        Assert.Equal(FindingOutcome.NothingRead, finding.Outcome);
        Assert.Equal(["Something is cut on one line, but no letter of it can be read."], finding.Reasons.ToArray());
    }

    [Fact]
    public void An_empty_list_leaves_everything_undecided()
    {
        var finding = Finding(Fabricated.Reading("Tolliver"), Fabricated.List());

        Assert.Equal(FindingOutcome.Undecided, finding.Outcome);
        Assert.Contains("The reference list 'fabricated' has no forms, so that there is nothing to compare with.", finding.Reasons);
    }

    [Fact]
    public void A_spelling_listed_as_a_period_copy_differs_and_names_the_status()
    {
        var finding = Finding(Fabricated.Reading("Finnimarch"));

        Assert.Equal(FindingOutcome.Differs, finding.Outcome);
        Assert.Contains(finding.Reasons, reason => reason.StartsWith("The spelling is listed: 'Finnimarch', listed as a period copy after", StringComparison.Ordinal));
        Assert.Contains(finding.Reasons, reason => reason.StartsWith("Letter 2 of line 1: the form has 'e', cut is 'i'", StringComparison.Ordinal));
    }

    [Fact]
    public void A_period_copy_in_one_doubtful_letter_is_undecided() => Assert.Equal(
        FindingOutcome.Undecided,
        Finding(Fabricated.Of(Fabricated.Line("Finnimarch").With(1, 0.5, ("e", 0.5)))).Outcome);

    [Fact]
    public void A_reproduction_that_spells_the_name_rightly_differs_as_a_whole()
    {
        var finding = Finding(Fabricated.Reading("THOS. BRACKWELL", "LONDON 1785"));

        Assert.Equal(FindingOutcome.Differs, finding.Outcome);
        Assert.Contains(finding.Reasons, reason => reason.Contains("mark of modern decorative pieces", StringComparison.Ordinal));
        Assert.Contains(finding.Reasons, reason => reason.StartsWith("The shorter form 'THOS. BRACKWELL'", StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_spelling_attested_and_on_reproductions_agrees_and_says_so()
    {
        var finding = Finding(Fabricated.Reading("Tolliver"), Houses.Plus("TOLLIVER", AttestationStatus.Reproduction));

        Assert.Equal(FindingOutcome.Agrees, finding.Outcome);
        Assert.Contains(finding.Reasons, reason => reason.StartsWith("The same letters are also listed as 'TOLLIVER', listed as a mark of modern decorative pieces", StringComparison.Ordinal));
    }

    [Fact]
    public void A_reproduction_without_any_attested_form_near_differs() => Assert.Equal(
        FindingOutcome.Differs,
        Finding(Fabricated.Reading("BRACKHAVEN NAVY 1812"), Fabricated.List("Tolliver").Plus("BRACKHAVEN NAVY 1812", AttestationStatus.Reproduction)).Outcome);

    [Fact]
    public void A_form_of_which_a_word_was_not_read_is_left_open()
    {
        var finding = Finding(Fabricated.Reading("Hathersedge"));

        Assert.Equal(FindingOutcome.Undecided, finding.Outcome);
        Assert.Contains("The word 'Wm.' of the form was not read on the piece; the form without it is not in the list.", finding.Reasons);
    }

    [Theory]
    [InlineData("olliver")]
    [InlineData("OLLIVER")]
    [InlineData("Harwick &|enhale")]
    public void A_first_letter_that_the_box_may_have_cut_off_is_left_open(string lines)
    {
        var finding = Finding(Fabricated.Reading(lines.Split('|')));

        Assert.Equal(FindingOutcome.Undecided, finding.Outcome);
        Assert.Contains(finding.CannotDecide, sentence => sentence.Contains("a first letter may lie outside the picture", StringComparison.Ordinal));
    }

    [Fact]
    public void A_last_letter_left_out_differs_and_the_box_is_to_be_looked_at()
    {
        var finding = Finding(Fabricated.Reading("Pellowic"));

        Assert.Equal(FindingOutcome.Differs, finding.Outcome);
        Assert.Contains("Whether the box round line 1 leaves out a letter at its end: look at the straightened picture.", finding.CannotDecide);
    }

    [Fact]
    public void A_first_letter_of_a_name_behind_other_words_is_not_cut_off_by_the_box() =>
        Assert.Equal(FindingOutcome.Differs, Finding(Fabricated.Reading("No. 9 olliver")).Outcome);

    [Fact]
    public void Another_attested_form_that_the_picture_allows_keeps_the_finding_open()
    {
        // 'Harwick' is excluded by its r, but 'Hanwick' is as probable as what was read.
        var list = Fabricated.List("Harwick", "Hanwick");
        var line = Fabricated.Line("Hamwick").With(2, 0.5, ("n", 0.495), ("r", 0.001));

        Assert.Equal(FindingOutcome.Undecided, Finding(Fabricated.Of(line), list).Outcome);
    }

    [Fact]
    public void The_words_left_out_of_the_comparison_are_named() =>
        Assert.Contains("'No. 9' and 'LONDON' on the same line are not part of the form and were not compared.", Finding(Fabricated.Reading("No. 9 Tolliver LONDON")).Reasons);

    [Fact]
    public void Small_lettering_is_advised_to_be_photographed_nearer()
    {
        var line = Fabricated.Line("Tollivor").With(6, 0.5, ("e", 0.5));
        var small = line with { Line = line.Line with { InkHeight = InscriptionLab.Measures.PixelLength.FromPixels(11) } };

        Assert.Contains("Go nearer: the lettering is about 11 pixels high in this photo, and 20 or more are needed.", Finding(Fabricated.Of(small)).Retake);
    }

    [Fact]
    public void No_finding_certifies_values_or_accuses()
    {
        string[] banned = ["fake", "forg", "fraud", "counterfeit", "genuine", "authentic", "guarant", "prove", "proof", "seller", "dishonest", "decei", "valuable", "worthless", "suspicious", "original"];
        Finding[] findings =
        [
            Finding(Fabricated.Reading("Tolliver")), Finding(Fabricated.Reading("Tollivor")), Finding(Fabricated.Reading("Finnimarch")), Finding(Fabricated.Reading("THOS. BRACKWELL LONDON 1785")),
            Finding(Fabricated.Reading("Hathersedge")), Finding(Fabricated.Reading("xyz")), Finding(Fabricated.Reading("??")), Finding(Fabricated.Of()),
            Finding(Fabricated.Of(Fabricated.Line("Tollivor").With(6, 0.5, ("e", 0.5)))), Finding(Fabricated.Reading("Tolliver"), Fabricated.List()),
        ];

        Assert.All(findings, finding =>
        {
            var text = All(finding);
            Assert.All(banned, word => Assert.DoesNotContain(word, text, StringComparison.OrdinalIgnoreCase));
            Assert.Equal(1, text.Split("certificate").Length - 1);
            Assert.Contains("not a certificate", text, StringComparison.Ordinal);
            Assert.Contains("Never look at the Sun", text, StringComparison.Ordinal);
            Assert.NotEmpty(finding.Reasons);
            Assert.NotEmpty(finding.CannotDecide);
        });
    }

    [Fact]
    public void The_reading_is_the_same_object_with_any_list()
    {
        var reading = Fabricated.Reading("Tollivor", "LONDON");

        foreach (var list in new[] { Houses, Fabricated.List(), Fabricated.List("Tolliver") })
        {
            var comparison = new Comparer(list).Compare(reading);
            new Judge().Decide(comparison);

            Assert.Same(reading, comparison.Reading);
            Assert.Equal(["Tollivor", "LONDON"], comparison.Reading.Lines.Select(line => line.Text));
        }
    }
}
