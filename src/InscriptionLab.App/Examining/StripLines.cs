using System;
using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.Strips;

namespace InscriptionLab.App.Examining;

/// <summary>Lines that were read on a strip worked out from several photos, handed to a photo.</summary>
internal static class StripLines
{
    /// <summary>Gives a line whose boxes lie in the strip with its boxes in the photo.</summary>
    internal static LineReading InPhoto(LineReading line, CylinderStripMap map)
    {
        Quad MoveQuad(Quad quad) => new(map.ToPhoto(quad.TopLeft), map.ToPhoto(quad.TopRight), map.ToPhoto(quad.BottomRight), map.ToPhoto(quad.BottomLeft));
        var inPhoto = MoveQuad(line.Line.InPhoto);
        return line with
        {
            Line = line.Line with { InPhoto = inPhoto, CropToPhoto = new ThroughStrip(line.Line.CropToPhoto, map), InkHeight = inPhoto.TopLeft.DistanceTo(inPhoto.BottomLeft) },
            Letters = [.. line.Letters.Select(letter => letter with { InPhoto = MoveQuad(letter.InPhoto) })],
        };
    }

    /// <summary>From a crop through the strip to the photo.</summary>
    private sealed record ThroughStrip(IPixelMap ToStrip, CylinderStripMap Map) : IPixelMap
    {
        public PixelPoint ToPhoto(PixelPoint point) => Map.ToPhoto(ToStrip.ToPhoto(point));

        public void FillRun(PixelPoint first, double stepX, double stepY, Span<PixelPoint> photoPoints)
        {
            for (var i = 0; i < photoPoints.Length; i++)
            {
                photoPoints[i] = ToPhoto(new PixelPoint(first.X + (i * stepX), first.Y + (i * stepY)));
            }
        }
    }
}
