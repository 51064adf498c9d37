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
/// <param name="DownAlong">Along-part of the unit vector toward the next line, as a reader sees it.</param>
/// <param name="DownAround">Around-part of that vector.</param>
internal sealed record PlacedLine(int Photo, LineReading Reading, double Along, double Around, double Period, double Height, double DownAlong, double DownAround)
{
    /// <summary>Gives how far the line lies from another, in heights of the taller lettering, once the other is moved round by an angle.</summary>
    internal double DistanceTo(PlacedLine other, double turn)
    {
        var (along, around) = (other.Along - Along, Shortest(other.Around + turn - Around));
        return Math.Sqrt((along * along) + (around * around)) / Math.Max(Height, other.Height);
    }

    /// <summary>Gives the shorter way round.</summary>
    internal double Shortest(double way) => double.IsPositiveInfinity(Period) ? way : Math.IEEERemainder(way, Period);
}
