using System;

namespace InscriptionLab.Vision.Reading;

/// <summary>Between which of a line's rows a letter stands, in parts of the capital height above the base line (common practice of type).</summary>
/// <param name="Top">Top: about 1 for capitals and ascenders, about 0.65 for small letters.</param>
/// <param name="Bottom">Bottom: 0 on the base line, about -0.3 for descenders.</param>
internal readonly record struct LetterZone(double Top, double Bottom)
{
    /// <summary>Small letters reach this share of the capitals: 0.63 to 0.72 in roman and sans faces, less in script.</summary>
    internal const double SmallTop = 0.67;

    /// <summary>Descenders reach this far below the base line.</summary>
    internal const double Descent = -0.28;

    private const string Small = "acegmnopqrsuvwxyzæœıſ";
    private const string Descending = "gjpqy";

    /// <summary>Gives where a letter usually stands.</summary>
    internal static LetterZone Of(string character)
    {
        var first = character[0];
        var accented = character.Length > 1 || "àáâäåèéêëìíîïñòóôöøùúûü".Contains(character[0], StringComparison.Ordinal);
        var capitalAccented = "ÀÁÂÄÅÈÉÊËÌÍÎÏÑÒÓÔÖÙÚÛÜ".Contains(character[0], StringComparison.Ordinal);
        return first switch
        {
            '.' => new(0.14, 0),
            ',' => new(0.14, -0.16),
            ':' => new(SmallTop, 0),
            ';' => new(SmallTop, -0.16),
            '\'' => new(1, 0.7),
            '-' => new(0.38, 0.24),
            '·' => new(0.5, 0.3),
            '°' => new(1, 0.6),
            '(' or ')' or '/' => new(1, Descent / 2),
            't' => new(0.88, 0),
            'ç' => new(SmallTop, Descent),
            'Ç' or 'Q' => new(1, -0.2),
            >= 'ᵃ' and <= 'ᵿ' or 'ʰ' or 'ʳ' or 'ʸ' or 'ˡ' or 'ˢ' or 'ⁱ' or 'ⁿ' => new(1, 0.5),
            _ when capitalAccented => new(1.27, 0),
            _ when accented => new(0.98, 0),
            _ when Descending.Contains(first, StringComparison.Ordinal) => new(first == 'j' ? 0.98 : SmallTop, Descent),
            _ when Small.Contains(first, StringComparison.Ordinal) => new(SmallTop, 0),
            _ => new(1, 0),
        };
    }
}
