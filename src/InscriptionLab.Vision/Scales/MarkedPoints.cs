using InscriptionLab.Cells;

namespace InscriptionLab.Vision.Scales;

/// <summary>Two points that the user marks, a known distance apart.</summary>
internal static class MarkedPoints
{
    /// <summary>How exactly a point is marked by hand, as a standard uncertainty in pixels (common practice in photogrammetry: one to three, seen enlarged).</summary>
    private const double MarkedPixels = 1.5;

    /// <summary>Half width of the strip about the points that is left out when the cell is looked for, in pixels.</summary>
    private const double Beside = 6;

    /// <summary>Gives the scale; null where the request lacks size or points.</summary>
    internal static ScaleSighting? Sighting(ScaleRequest request)
    {
        if (request.Size is not { } size || request.Marks.Length != 2)
        {
            return null;
        }

        var (from, to) = (request.Marks[0], request.Marks[1]);
        var length = from.DistanceTo(to).Pixels;
        var (nx, ny) = (-Beside * (to.Y - from.Y) / length, Beside * (to.X - from.X) / length);
        return new ScaleSighting(
            ScaleKind.Points,
            size,
            false,
            [],
            [
                new EdgeObservation(0, true, 0, 0, from),
                new EdgeObservation(0, true, size.Millimetres, 0, to),
                new EdgeObservation(0, false, 0, 0, from),
                new EdgeObservation(0, false, 0, 0, to),
            ],
            [],
            [new(from.X + nx, from.Y + ny), new(to.X + nx, to.Y + ny), new(to.X - nx, to.Y - ny), new(from.X - nx, from.Y - ny)])
        {
            ReadingPixels = MarkedPixels,
        };
    }
}
