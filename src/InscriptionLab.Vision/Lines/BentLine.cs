using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Strips;

namespace InscriptionLab.Vision.Lines;

/// <summary>The box in the photo of a line that is bent there: as the letters in its middle stand, and large enough for the whole line.</summary>
internal static class BentLine
{
    /// <summary>Places along the line at which its edges are led to the photo: five degrees apart on a full turn.</summary>
    private const int Places = 73;

    /// <summary>Gives the box, corners in reading order.</summary>
    internal static Quad Box(StripMap map, Quad inStrip)
    {
        var (top, bottom) = (Edge(map, inStrip.TopLeft, inStrip.TopRight), Edge(map, inStrip.BottomLeft, inStrip.BottomRight));
        var (above, below) = (top[Places / 2], bottom[Places / 2]);
        var height = above.DistanceTo(below).Pixels;
        if (!(height > 0))
        {
            return new Quad(top[0], top[^1], bottom[^1], bottom[0]);
        }

        // Down as the letters in the middle stand; along to the right of it as they are read, which is to the left for mirrored lettering.
        var (downX, downY) = ((below.X - above.X) / height, (below.Y - above.Y) / height);
        var (after, before) = (top[(Places / 2) + 1], top[(Places / 2) - 1]);
        var sense = ((after.X - before.X) * downY) - ((after.Y - before.Y) * downX) >= 0 ? 1 : -1;
        var (alongX, alongY) = (sense * downY, -sense * downX);
        var places = top.Concat(bottom).Select(point => (Along: (point.X * alongX) + (point.Y * alongY), Down: (point.X * downX) + (point.Y * downY))).ToList();
        var (left, right, upper, lower) = (places.Min(at => at.Along), places.Max(at => at.Along), places.Min(at => at.Down), places.Max(at => at.Down));
        PixelPoint At(double along, double down) => new((along * alongX) + (down * downX), (along * alongY) + (down * downY));
        return new Quad(At(left, upper), At(right, upper), At(right, lower), At(left, lower));
    }

    private static PixelPoint[] Edge(StripMap map, PixelPoint from, PixelPoint to) =>
    [
        .. Enumerable.Range(0, Places).Select(i => (double)i / (Places - 1)).Select(t => map.ToPhoto(new PixelPoint(from.X + (t * (to.X - from.X)), from.Y + (t * (to.Y - from.Y))))),
    ];
}
