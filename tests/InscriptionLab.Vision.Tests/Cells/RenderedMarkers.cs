using System;
using OpenCvSharp;
using OpenCvSharp.Aruco;

namespace InscriptionLab.Vision.Tests.Cells;

/// <summary>A card of 40 mm with four coded squares of 12 mm.</summary>
internal static class RenderedMarkers
{
    internal const double Side = 12;
    private const double Gap = 5;
    private const int Cells = 6;
    private static readonly bool[][] Bright = Make();

    /// <summary>Gives the light of the card at a place in millimetres.</summary>
    internal static double Light(double x, double y)
    {
        const double White = 0.75;
        const double Black = 0.04;
        for (var marker = 0; marker < Bright.Length; marker++)
        {
            var left = Gap + ((marker % 2) * (Side + Gap));
            var top = Gap + ((marker / 2) * (Side + Gap));
            var (i, j) = (Math.Floor((x - left) / Side * Cells), Math.Floor((y - top) / Side * Cells));
            if (i >= 0 && j >= 0 && i < Cells && j < Cells)
            {
                return Bright[marker][((int)j * Cells) + (int)i] ? White : Black;
            }
        }

        return White;
    }

    private static bool[][] Make()
    {
        using var dictionary = CvAruco.GetPredefinedDictionary(PredefinedDictionaryType.Dict4X4_50);
        var all = new bool[4][];
        for (var marker = 0; marker < all.Length; marker++)
        {
            using var picture = new Mat();
            dictionary.GenerateImageMarker(marker + 3, Cells, picture, 1);
            picture.GetArray(out byte[] levels);
            all[marker] = Array.ConvertAll(levels, level => level > 127);
        }

        return all;
    }
}
