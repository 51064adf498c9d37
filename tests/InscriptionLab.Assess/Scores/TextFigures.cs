using System;
using System.Collections.Generic;
using System.Linq;

namespace InscriptionLab.Assess.Scores;

/// <summary>The scores of several photos added up: every rate is a sum over a sum, and both sums can be seen.</summary>
/// <param name="Group">What the photos have in common.</param>
/// <param name="Scores">One score a photo.</param>
internal sealed record TextFigures(string Group, IReadOnlyList<TextScore> Scores)
{
    internal int Photos => Scores.Count;

    internal int Letters => Sum(score => score.Letters);

    internal int Edits => Sum(score => score.Edits);

    internal int LettersVisible => Sum(score => score.LettersVisible);

    internal int EditsVisible => Sum(score => score.EditsVisible);

    internal int EditsIgnoringCase => Sum(score => score.EditsIgnoringCase);

    internal int LettersNoSpaces => Sum(score => score.LettersNoSpaces);

    internal int EditsNoSpaces => Sum(score => score.EditsNoSpaces);

    internal int Words => Sum(score => score.Words);

    internal int WordsRight => Sum(score => score.WordsRight);

    internal int Lines => Sum(score => score.Lines);

    internal int LinesRight => Sum(score => score.LinesRight);

    internal int NameWords => Sum(score => score.NameWords);

    internal int NameWordsRight => Sum(score => score.NameWordsRight);

    internal int Variants => Scores.Count(score => score.Variant is not null);

    internal int Fates(VariantFate fate) => Scores.Count(score => score.Variant == fate);

    private int Sum(Func<TextScore, int> count) => Scores.Sum(count);
}
