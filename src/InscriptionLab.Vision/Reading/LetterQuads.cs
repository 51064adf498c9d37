using InscriptionLab.Imaging;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Reading;

/// <summary>Boxes of letters in a line crop, and where they lie in the photo.</summary>
internal static class LetterQuads
{
    /// <summary>Gives an upright box of a crop.</summary>
    internal static Quad Rectangle(double left, double top, double right, double bottom) =>
        new(new(left, top), new(right, top), new(right, bottom), new(left, bottom));

    /// <summary>Leads each corner to the photo; the corners keep the reader's order.</summary>
    internal static Quad ToPhoto(Quad inCrop, IPixelMap map) => new(
        map.ToPhoto(inCrop.TopLeft),
        map.ToPhoto(inCrop.TopRight),
        map.ToPhoto(inCrop.BottomRight),
        map.ToPhoto(inCrop.BottomLeft));
}
