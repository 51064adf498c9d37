using System.Collections.Immutable;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Scales;

/// <summary>A row of evenly spaced ticks along a straight line of the picture.</summary>
/// <param name="Origin">A point of the line.</param>
/// <param name="DirectionX">X of the line's unit direction.</param>
/// <param name="DirectionY">Y of the line's unit direction.</param>
/// <param name="Sign">+1 for dark ticks on light, -1 for light ticks on dark.</param>
/// <param name="Places">Number of each tick, from 0, and its distance from the origin along the line in pixels; in order.</param>
internal sealed record TickRun(PixelPoint Origin, double DirectionX, double DirectionY, int Sign, ImmutableArray<(int Number, double Along)> Places)
{
    /// <summary>Gets the mean distance of neighbouring ticks in pixels.</summary>
    internal double Period => (Places[^1].Along - Places[0].Along) / (Places[^1].Number - Places[0].Number);

    /// <summary>Gives the picture point at a distance along the line and beside it (to the right of the direction as Y is of X).</summary>
    internal PixelPoint At(double along, double beside) =>
        new(Origin.X + (along * DirectionX) - (beside * DirectionY), Origin.Y + (along * DirectionY) + (beside * DirectionX));
}
