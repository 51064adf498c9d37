using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>One line of lettering.</summary>
/// <param name="Id">Name of the line; stays while it is corrected.</param>
/// <param name="Basis">What a correction of a letter stands on.</param>
/// <param name="Text">As read, "?" where a letter cannot be seen.</param>
/// <param name="Leiden">The same in Leiden form.</param>
/// <param name="Confidence">Probability that the whole line is right.</param>
/// <param name="Lettering">Probability that it is lettering at all.</param>
/// <param name="AngleDegrees">Reading direction in the strip.</param>
/// <param name="UpsideDown">True where the photo shows it upside down.</param>
/// <param name="Mirrored">True where the photo is a mirror image.</param>
/// <param name="InkHeightPx">Height of the ink in the photo.</param>
/// <param name="InStrip">Its box in the strip, corners as its reader sees them; null where it does not lie on the strip.</param>
/// <param name="InPhoto">Its box in the photo.</param>
/// <param name="CropSize">Columns and rows of its cut-out picture.</param>
/// <param name="CropKey">Changes whenever the cut-out picture does.</param>
/// <param name="Letters">Its letters, spaces included.</param>
/// <param name="Second">What the second reader made of it; null where there was none.</param>
/// <param name="By">The person who drew its box.</param>
internal sealed record LineAnswer(
    string Id,
    string Basis,
    string Text,
    string Leiden,
    double Confidence,
    double Lettering,
    double AngleDegrees,
    bool UpsideDown,
    bool Mirrored,
    double InkHeightPx,
    ImmutableArray<double[]>? InStrip,
    ImmutableArray<double[]> InPhoto,
    ImmutableArray<int> CropSize,
    string CropKey,
    ImmutableArray<LetterAnswer> Letters,
    SecondAnswer? Second,
    HandAnswer? By)
{
    /// <summary>Gets the line as the program read it; null where no person read it otherwise.</summary>
    public string? Program { get; init; }
}
