using InscriptionLab.Imaging;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Lines;

/// <summary>Leads from the pixels of a line crop through the strip to the photo.</summary>
/// <param name="Trace">Where the line runs in the strip, as the crop shows it before mirroring.</param>
/// <param name="StripMap">Leads on to the photo.</param>
/// <param name="Scale">Crop pixels a strip pixel, above zero.</param>
/// <param name="LeftMargin">Crop pixels before the start of the ink.</param>
/// <param name="Width">Columns of the crop.</param>
/// <param name="Height">Rows of the crop; the middle line runs along the middle.</param>
/// <param name="Mirrored">True where the crop is turned over left to right, so that mirrored lettering reads.</param>
internal sealed record LineCropMap(LineTrace Trace, IPixelMap StripMap, double Scale, double LeftMargin, int Width, int Height, bool Mirrored) : IPixelMap
{
    /// <inheritdoc/>
    public PixelPoint ToPhoto(PixelPoint point) => StripMap.ToPhoto(ToStrip(point));

    /// <summary>Gives the strip point shown at a crop point.</summary>
    internal PixelPoint ToStrip(PixelPoint point)
    {
        var x = Mirrored ? Width - 1 - point.X : point.X;
        return Trace.At((x + 0.5 - LeftMargin) / Scale, (point.Y + 0.5 - (Height / 2.0)) / Scale);
    }
}
