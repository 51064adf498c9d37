using System;
using InscriptionLab.Measures;

namespace InscriptionLab.Advice;

/// <summary>From which side the light of one photo comes, seen over the surface at the lettering.</summary>
/// <param name="Side">Direction to the lamp over the surface: from the reading direction toward the foot of the letters, so 0 is beyond the line's end and 90 degrees below the line.</param>
/// <param name="Uncertainty">Standard uncertainty of <paramref name="Side"/>.</param>
/// <param name="InPhoto">The same direction in the photo, from the X axis toward the Y axis.</param>
/// <param name="Basis">What told it, in words.</param>
public sealed record LampSight(Angle Side, Angle Uncertainty, Angle InPhoto, string Basis)
{
    /// <summary>Half the angle of one of the eight directions that have a name.</summary>
    private const double Sector = 45;

    private static readonly string[] Names =
    [
        "beyond the end of the line", "below the line, toward its end", "below the line", "below the line, toward its start",
        "beyond the start of the line", "above the line, toward its start", "above the line", "above the line, toward its end",
    ];

    /// <summary>Gets the side in words, as a reader of the lettering sees it.</summary>
    public string Words => Names[(((int)Math.Round(Side.Degrees / Sector) % Names.Length) + Names.Length) % Names.Length];

    /// <summary>Gets how far the light runs from square to the line: 0 for a lamp above or below it, 90 degrees for one beyond an end.</summary>
    internal Angle FromSquare => Angle.FromRadians(Math.Acos(Math.Min(1, Math.Abs(Math.Sin(Side.Radians)))));
}
