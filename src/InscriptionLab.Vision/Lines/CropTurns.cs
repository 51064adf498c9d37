using System;
using InscriptionLab.Imaging;

namespace InscriptionLab.Vision.Lines;

/// <summary>A line crop turned and turned over. Crops have the same margin on all sides, so the result is the crop that the turned line would give.</summary>
internal static class CropTurns
{
    /// <summary>Gives the crop in one of four orientations: 0 as it is, 1 upside down, 2 in a mirror, 3 in a mirror and upside down.</summary>
    internal static GrayImage To(int orientation, GrayImage crop) => orientation switch
    {
        1 => Turned(crop),
        2 => Mirrored(crop),
        3 => Turned(Mirrored(crop)),
        _ => crop,
    };

    /// <summary>Gives the crop seen upside down.</summary>
    internal static GrayImage Turned(GrayImage crop)
    {
        var pixels = crop.Pixels.ToArray();
        Array.Reverse(pixels);
        return new GrayImage(crop.Width, crop.Height, pixels);
    }

    /// <summary>Gives the crop seen in a mirror, left and right exchanged.</summary>
    internal static GrayImage Mirrored(GrayImage crop)
    {
        var pixels = crop.Pixels.ToArray();
        for (var row = 0; row < crop.Height; row++)
        {
            Array.Reverse(pixels, row * crop.Width, crop.Width);
        }

        return new GrayImage(crop.Width, crop.Height, pixels);
    }
}
