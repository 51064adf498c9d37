using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>One letter.</summary>
/// <param name="Id">Its name in the line, which stays while other letters are split or taken away.</param>
/// <param name="Text">The letter, "?" where it cannot be seen, " " between words.</param>
/// <param name="Probability">How likely it is.</param>
/// <param name="Others">What else may stand there.</param>
/// <param name="InPhoto">Its box in the photo; null for a space without one.</param>
/// <param name="InStrip">Its box in the strip.</param>
/// <param name="InCrop">Left, top, right, bottom in the line's picture.</param>
/// <param name="By">The person who read it; null where the program did.</param>
internal sealed record LetterAnswer(
    int Id,
    string Text,
    double Probability,
    ImmutableArray<ChanceAnswer> Others,
    ImmutableArray<double[]>? InPhoto,
    ImmutableArray<double[]>? InStrip,
    ImmutableArray<double>? InCrop,
    HandAnswer? By);
