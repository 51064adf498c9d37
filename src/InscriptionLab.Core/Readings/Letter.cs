using System.Collections.Immutable;
using InscriptionLab.Measures;

namespace InscriptionLab.Readings;

/// <summary>One letter as read; spaces between words are letters too, with the character " ".</summary>
/// <param name="Character">The letter, one grapheme cluster; "?" where something is cut that cannot be read.</param>
/// <param name="Probability">Calibrated probability of <paramref name="Character"/>; of the best candidate where it is "?".</param>
/// <param name="Alternatives">Other letters that may stand here, most probable first; the empty string means "no letter here".</param>
/// <param name="InPhoto">The letter's box in the upright photo, corners in reading order.</param>
/// <param name="InCrop">The letter's box in the line crop.</param>
public sealed record Letter(
    string Character,
    Probability Probability,
    ImmutableArray<LetterCandidate> Alternatives,
    Quad InPhoto,
    Quad InCrop)
{
    /// <summary>The mark for a letter that is cut but cannot be read.</summary>
    public const string Unreadable = "?";

    /// <summary>Gets a value indicating whether this is the space between two words.</summary>
    public bool IsSpace => Character == " ";
}
