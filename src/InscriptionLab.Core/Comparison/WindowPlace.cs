using InscriptionLab.Readings;

namespace InscriptionLab.Comparison;

/// <summary>One place of a window: a letter of the reading, or the break between two lines.</summary>
/// <param name="Letter">The letter; null for a line break.</param>
/// <param name="Weights">What the reading says of the place; null for a line break.</param>
/// <param name="Line">Line of the reading.</param>
/// <param name="Index">Index into the line's letters; for a break, the number of letters of the line before it.</param>
internal sealed record WindowPlace(Letter? Letter, PlaceWeights? Weights, int Line, int Index)
{
    internal bool IsBreak => Letter is null;

    internal bool IsGap => Weights is null || Weights.IsSpace;

    internal bool IsPunctuation => Weights is { IsPunctuation: true };

    internal string Read => Letter?.Character ?? LetterFold.Space;
}
