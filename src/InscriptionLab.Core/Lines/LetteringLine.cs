using InscriptionLab.Imaging;
using InscriptionLab.Measures;

namespace InscriptionLab.Lines;

/// <summary>One line of lettering, cut out and turned so that it reads from left to right.</summary>
/// <param name="Crop">Grey picture of the line, upright for the reader.</param>
/// <param name="CropToPhoto">Leads from crop pixels to photo pixels.</param>
/// <param name="InStrip">The line's box in the strip, or the flat photo, in which it was found; corners in reading order.</param>
/// <param name="InPhoto">The line's box in the photo, corners in reading order.</param>
/// <param name="Direction">How the line runs on the tube.</param>
/// <param name="InkHeight">Height from ink top to ink bottom in photo pixels (before resampling): what the lens resolved.</param>
/// <param name="Lettering">Probability that this is lettering at all.</param>
public sealed record LetteringLine(
    GrayImage Crop,
    IPixelMap CropToPhoto,
    Quad InStrip,
    Quad InPhoto,
    LineDirection Direction,
    PixelLength InkHeight,
    Probability Lettering)
{
    /// <summary>Gets how far the line bulges at half length where it was found, as a share of its length; 0 for a straight line.</summary>
    public double Bulge { get; init; }
}
