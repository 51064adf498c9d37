using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Comparison;

namespace InscriptionLab.Findings;

/// <summary>Puts an outcome into words: what speaks for it, what the photo leaves open, how to photograph again.</summary>
internal sealed class FindingAccount(ReadingComparison comparison, JudgeOptions options)
{
    private const string WhoCutIt = "Who cut the letters, and when: spelling alone does not tell.";

    private readonly FindingSentences _say = new(comparison, options);

    internal Finding NothingRead()
    {
        var lines = comparison.Reading.Lines.Count(line => line.Letters.Any(letter => !letter.IsSpace));
        return Make(
            FindingOutcome.NothingRead,
            [lines == 0 ? "No lettering was read in this photo." : FindingSentences.CutButUnreadable(lines)],
            ["What is cut there, if anything."],
            _say.Retake([]));
    }

    internal Finding NothingNear()
    {
        var reason = comparison.References.Forms.IsEmpty
            ? $"The reference list '{comparison.References.Name}' has no forms, so that there is nothing to compare with."
            : comparison.Nearest.IsEmpty
                ? "No form in the list is near: none shares two neighbouring letters with what was read."
                : _say.NoneNear(comparison.Nearest[0]);
        return Make(FindingOutcome.Undecided, [.. _say.LinesRead(), reason], ["Whether the spelling is one that a house used."], _say.Retake(_say.WeakestLetters()));
    }

    internal Finding Agrees(FormStanding leading, ImmutableArray<FormStanding> sameWords)
    {
        var nearest = leading.Nearest;
        var reasons = new List<string> { _say.Read(nearest), FindingSentences.SpeltAlike(nearest), _say.LeastCertain(nearest) };
        reasons.AddRange(FindingSentences.NotSpelling(nearest));
        reasons.AddRange(_say.OtherWords(nearest));
        reasons.AddRange(sameWords.Where(form => !form.IsAttested && form.IsSpeltAlike).Select(form => FindingSentences.AlsoListed(form.Nearest)));
        return Make(FindingOutcome.Agrees, reasons, [WhoCutIt], []) with { Leading = nearest };
    }

    internal Finding Differs(FormStanding leading, ImmutableArray<FormStanding> sameWords)
    {
        var nearest = leading.Nearest;
        var attested = leading.IsAttested ? leading : sameWords.FirstOrDefault(form => form.IsAttested && !form.IsPartOf(leading));
        var reasons = new List<string> { _say.Read(nearest) };
        if (attested is not null)
        {
            reasons.Add(FindingSentences.NearestAttested(attested.Nearest));
            reasons.AddRange(_say.Against(attested.Against));
            reasons.AddRange(_say.WholeForm(attested.Nearest));
        }

        reasons.AddRange(sameWords.Where(form => !form.IsAttested && form.IsSpeltAlike).Select(form => FindingSentences.ListedAs(form.Nearest)));
        reasons.AddRange(sameWords.Where(form => form.IsAttested && form.IsSpeltAlike && form.IsPartOf(leading)).Select(form => FindingSentences.ShorterForm(form.Nearest, nearest)));
        reasons.AddRange(FindingSentences.NotSpelling(nearest));
        reasons.AddRange(_say.OtherWords(nearest));
        ImmutableArray<LetterDifference> open = attested?.Open ?? [];
        ImmutableArray<string> cannotDecide =
        [
            .. _say.Open(open),
            .. _say.AtLineEnds(attested?.Against ?? []),
            "Why the spelling differs: spellings near to a house's own are known from its time and from later.",
            WhoCutIt,
        ];
        return Make(FindingOutcome.Differs, reasons, cannotDecide, open.IsEmpty ? [] : _say.Retake(open)) with { Leading = nearest };
    }

    internal Finding Undecided(FormStanding leading, ImmutableArray<FormStanding> sameWords)
    {
        var nearest = leading.Nearest;
        var open = leading.Open.IsEmpty && leading.IsSpeltAlike ? FindingSentences.WeakestLetters(nearest) : leading.Open;
        var reasons = new List<string>
        {
            _say.Read(nearest),
            leading.IsAttested ? FindingSentences.NearestAttested(nearest) : FindingSentences.ListedAs(nearest),
        };
        reasons.AddRange(leading.Words.AbsentWords.Select(FindingSentences.AbsentWord));
        reasons.AddRange(_say.Against(leading.Against));
        reasons.AddRange(FindingSentences.NotSpelling(nearest));
        reasons.AddRange(_say.OtherWords(nearest));
        reasons.AddRange(sameWords.Where(form => form != leading && !form.IsAttested && form.IsSpeltAlike).Select(form => FindingSentences.AlsoListed(form.Nearest)));
        if (leading.IsSpeltAlike && leading.Open.IsEmpty)
        {
            reasons.Add(FindingSentences.TooManyDoubts(nearest));
        }

        return Make(FindingOutcome.Undecided, reasons, [.. _say.Open(open), "Whether the spelling is that of the form."], _say.Retake(open)) with { Leading = nearest };
    }

    private Finding Make(FindingOutcome outcome, IEnumerable<string> reasons, ImmutableArray<string> cannotDecide, ImmutableArray<string> retake) =>
        new(outcome, comparison.Nearest, [.. reasons], cannotDecide, retake) { Cautions = FindingSentences.Cautions };
}
