using System.Collections.Generic;
using System.Linq;
using System.Threading;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Native;
using OpenCvSharp.Aruco;

namespace InscriptionLab.Vision.Scales;

/// <summary>Coded squares found in a picture.</summary>
/// <param name="Squares">Four corners of each, clockwise as seen from the top left of its pattern.</param>
/// <param name="Numbers">Number of each in its dictionary.</param>
/// <param name="Cells">Cells along a side, the black border counted.</param>
internal sealed record MarkerDetection(IReadOnlyList<PixelPoint[]> Squares, IReadOnlyList<int> Numbers, int Cells)
{
    /// <summary>Markers of one dictionary after which no other is tried: two false ones of one dictionary are not to be expected.</summary>
    private const int EnoughMarkers = 2;

    /// <summary>Dictionaries tried, in this order; the one with most markers wins.</summary>
    private static readonly PredefinedDictionaryType[] Dictionaries =
    [
        PredefinedDictionaryType.Dict4X4_50,
        PredefinedDictionaryType.Dict4X4_1000,
        PredefinedDictionaryType.Dict5X5_1000,
        PredefinedDictionaryType.Dict6X6_1000,
        PredefinedDictionaryType.Dict7X7_1000,
        PredefinedDictionaryType.DictArucoOriginal,
        PredefinedDictionaryType.DictAprilTag_36h11,
    ];

    /// <summary>Finds the squares of the dictionary that has most of them.</summary>
    /// <param name="image">Picture.</param>
    /// <param name="cardOnly">True to look for the scale card's dictionary only.</param>
    /// <param name="cancel">Stops the search.</param>
    internal static MarkerDetection Of(GrayImage image, bool cardOnly, CancellationToken cancel)
    {
        using var native = NativeImage.From(image);
        var best = new MarkerDetection([], [], 0);
        foreach (var type in cardOnly ? Dictionaries.Take(1) : Dictionaries)
        {
            cancel.ThrowIfCancellationRequested();
            using var dictionary = CvAruco.GetPredefinedDictionary(type);
            using var detector = new ArucoDetector(dictionary);
            detector.DetectMarkers(native.Mat, out var corners, out var numbers, out _);
            if (corners.Length > best.Squares.Count)
            {
                // The pattern and its black border, one cell wide on each side.
                best = new MarkerDetection([.. corners.Select(c => c.Select(p => new PixelPoint(p.X, p.Y)).ToArray())], numbers, dictionary.MarkerSize + 2);
            }

            if (best.Squares.Count >= EnoughMarkers)
            {
                break;
            }
        }

        return best;
    }
}
