using System;
using System.Linq;
using InscriptionLab.App.Reports.Html;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.Reliefs;
using InscriptionLab.Vision.Pictures;

namespace InscriptionLab.App.Reports;

/// <summary>What lies round the lettering on a surface whose form several lamps told.</summary>
/// <param name="Left">First column.</param>
/// <param name="Top">First row.</param>
/// <param name="Width">Columns.</param>
/// <param name="Height">Rows.</param>
internal sealed record ReliefCut(int Left, int Top, int Width, int Height)
{
    /// <summary>Room round the lettering, as a share of the tube's diameter: about a letter's height.</summary>
    private const double RoomOfDiameter = 0.08;

    /// <summary>Gives the part round the lettering; the whole surface where nothing was read on it.</summary>
    internal static ReliefCut Round(SurfaceRelief relief, Reading reading)
    {
        var (columns, rows) = (relief.Height.Width, relief.Height.Height);
        var boxes = reading.Lines.SelectMany(line => line.Letters).Where(letter => !letter.IsSpace)
            .SelectMany(letter => Drawing.Corners(letter.InPhoto)).Select(corner => relief.Map.ToStrip(corner)).OfType<PixelPoint>().ToList();
        if (boxes.Count == 0)
        {
            return new ReliefCut(0, 0, columns, rows);
        }

        var room = RoomOfDiameter * 2 * relief.Map.PixelsPerRadius;
        var (left, top) = ((int)Math.Max(0, boxes.Min(point => point.X) - room), (int)Math.Max(0, boxes.Min(point => point.Y) - room));
        var (right, bottom) = (Math.Min(columns, (int)(boxes.Max(point => point.X) + room)), Math.Min(rows, (int)(boxes.Max(point => point.Y) + room)));
        return left < right && top < bottom ? new ReliefCut(left, top, right - left, bottom - top) : new ReliefCut(0, 0, columns, rows);
    }

    internal ColourImage Of(ColourImage picture) => PictureCutter.Cut(picture, Left, Top, Width, Height);

    internal GrayImage Of(GrayImage picture)
    {
        var pixels = new byte[Width * Height];
        for (var row = 0; row < Height; row++)
        {
            picture.Pixels.Slice(((Top + row) * picture.Width) + Left, Width).CopyTo(pixels.AsSpan(row * Width));
        }

        return new GrayImage(Width, Height, pixels);
    }
}
