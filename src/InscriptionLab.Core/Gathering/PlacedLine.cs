using System;
using InscriptionLab.Readings;

namespace InscriptionLab.Gathering;

/// <summary>A line of one photo at its place on the tube.</summary>
/// <param name="Photo">Index of the photo.</param>
/// <param name="Reading">The line as that photo reads it.</param>
/// <param name="Along">Middle of the line along the tube, in the unit of the set.</param>
/// <param name="Around">Middle of the line across the tube, in the same unit: round the surface for turns, over the photo for raking.</param>
/// <param name="Period">After how much the place round the tube is the same again: a full turn, or infinity over the photo.</param>
/// <param name="Height">Height of the lettering in that unit.</param>
/// <param name="Length">Length of the line in that unit.</param>
/// <param name="DownAlong">Along-part of the unit vector toward the next line, as a reader sees it.</param>
/// <param name="DownAround">Around-part of that vector.</param>
internal sealed record PlacedLine(int Photo, LineReading Reading, double Along, double Around, double Period, double Height, double Length, double DownAlong, double DownAround)
{
    /// <summary>Tells whether another line, once it is moved round by an angle, lies on the same row and covers a part of this line.</summary>
    /// <param name="other">The other line.</param>
    /// <param name="turn">Angle by which the other line is moved.</param>
    /// <param name="heights">How far off the row it may lie, in heights of the taller lettering.</param>
    internal bool IsAt(PlacedLine other, double turn, double heights)
    {
        var (along, around) = (other.Along - Along, Shortest(other.Around + turn - Around));
        var off = (along * DownAlong) + (around * DownAround);
        var aside = (along * DownAround) - (around * DownAlong);
        return Math.Abs(off) <= heights * Math.Max(Height, other.Height) && Math.Abs(aside) <= Math.Max(Length, other.Length) / 2;
    }

    /// <summary>Gives the shorter way round.</summary>
    internal double Shortest(double way) => double.IsPositiveInfinity(Period) ? way : Math.IEEERemainder(way, Period);
}
