using System;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Lines;

/// <summary>
/// Where a line of lettering runs in a strip. Its middle line (half way between ink top and ink bottom) goes from start to end as the
/// reader reads, and bulges by a parabola between. All lengths are strip pixels.
/// </summary>
/// <param name="Start">Middle line where the ink begins.</param>
/// <param name="End">Middle line where the ink ends.</param>
/// <param name="Bow">How far the middle line bulges at half length, toward the reader's bottom where positive.</param>
/// <param name="InkHeight">From ink top to ink bottom.</param>
/// <param name="Score">Mean probability that the cells of the line are lettering.</param>
internal sealed record LineTrace(PixelPoint Start, PixelPoint End, double Bow, double InkHeight, double Score)
{
    internal double Length => Start.DistanceTo(End).Pixels;

    /// <summary>Gets the reading direction as a unit vector.</summary>
    internal (double X, double Y) Along => Length > 0 ? ((End.X - Start.X) / Length, (End.Y - Start.Y) / Length) : (1, 0);

    /// <summary>Gets the direction from the reader's top to bottom as a unit vector: the reading direction turned by a right angle.</summary>
    internal (double X, double Y) Down => (-Along.Y, Along.X);

    internal Angle Direction => Angle.FromRadians(Math.Atan2(Along.Y, Along.X));

    /// <summary>Gets the box from ink top to ink bottom, corners as the trace runs.</summary>
    internal Quad Box => new(At(0, -InkHeight / 2), At(Length, -InkHeight / 2), At(Length, InkHeight / 2), At(0, InkHeight / 2));

    /// <summary>Gives the same ink read from the other end.</summary>
    internal LineTrace Turned() => this with { Start = End, End = Start, Bow = -Bow };

    /// <summary>Gives the strip point at a distance along the line from its start and a distance down from its middle line.</summary>
    internal PixelPoint At(double along, double down)
    {
        var length = Length;
        var (x, y) = length > 0 ? ((End.X - Start.X) / length, (End.Y - Start.Y) / length) : (1, 0);
        var u = length > 0 ? Math.Clamp(((2 * along) / length) - 1, -1, 1) : 0;
        var off = down + (Bow * (1 - (u * u)));
        return new PixelPoint(Start.X + (along * x) - (off * y), Start.Y + (along * y) + (off * x));
    }

    /// <summary>Gives a strip point as distance along the line from its start and distance down from the straight line between its ends.</summary>
    internal (double Along, double Down) Locate(PixelPoint point)
    {
        var (x, y) = (point.X - Start.X, point.Y - Start.Y);
        return ((x * Along.X) + (y * Along.Y), (x * Down.X) + (y * Down.Y));
    }
}
