using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.Tubes;

namespace InscriptionLab.Gathering;

/// <summary>Says where the lines of each photo lie: on the surface of the tube, or in the photo where the camera stood still.</summary>
internal static class LinePlacer
{
    /// <summary>Places lines in photo pixels: for one view under different lamps.</summary>
    internal static List<PlacedLine> InPhoto(IReadOnlyList<GatheredPhoto> photos) =>
        Place(photos, double.PositiveInfinity, (_, point) => (point.X, point.Y));

    /// <summary>Places lines on the surface in radii of the tube: for a tube that is turned. Lines of photos without a tube, and lines beside the tube, are left out.</summary>
    internal static List<PlacedLine> OnTube(IReadOnlyList<GatheredPhoto> photos) =>
        Place(photos, 2 * Math.PI, (photo, point) => photo.Tube is { } tube && new CylinderProjection(tube.Pose).ToSurface(point) is { } surface
            ? (surface.Axial, surface.Around.Radians)
            : null);

    private static List<PlacedLine> Place(IReadOnlyList<GatheredPhoto> photos, double period, Func<GatheredPhoto, PixelPoint, (double Along, double Around)?> place) =>
        [.. photos.SelectMany((photo, index) => photo.Reading.Lines.Select(line => Place(photo, index, line, period, place))).OfType<PlacedLine>()];

    private static PlacedLine? Place(GatheredPhoto photo, int index, LineReading line, double period, Func<GatheredPhoto, PixelPoint, (double Along, double Around)?> place)
    {
        var box = line.Line.InPhoto;
        if (place(photo, Middle(box.TopLeft, box.TopRight)) is not { } top || place(photo, Middle(box.BottomLeft, box.BottomRight)) is not { } bottom)
        {
            return null;
        }

        var (along, around) = (bottom.Along - top.Along, bottom.Around - top.Around);
        var height = Math.Sqrt((along * along) + (around * around));
        var length = height * (box.TopLeft.DistanceTo(box.TopRight) / box.TopLeft.DistanceTo(box.BottomLeft));
        return height > 0
            ? new PlacedLine(index, line, (top.Along + bottom.Along) / 2, (top.Around + bottom.Around) / 2, period, height, length, along / height, around / height)
            : null;
    }

    private static PixelPoint Middle(PixelPoint one, PixelPoint other) => new((one.X + other.X) / 2, (one.Y + other.Y) / 2);
}
