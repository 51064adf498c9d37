using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Native;
using OpenCvSharp;
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

    /// <summary>Room round a four-cornered shape in which it is looked at by itself, pixels: twice the widest window over which the detector averages to either side.</summary>
    private const int Room = 24;

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
        using var native = NativeImage.View(image);
        var best = new MarkerDetection([], [], 0);
        Rect[]? shapes = null;
        foreach (var type in cardOnly ? Dictionaries.Take(1) : Dictionaries)
        {
            cancel.ThrowIfCancellationRequested();
            using var dictionary = CvAruco.GetPredefinedDictionary(type);
            if (shapes is not null && !Array.Exists(shapes, shape => Shows(dictionary, native, shape)))
            {
                continue;
            }

            using var detector = new ArucoDetector(dictionary);
            detector.DetectMarkers(native.Mat, out var corners, out var numbers, out var others);
            shapes ??= [.. corners.Concat(others).Select(quad => Frame(quad) & new Rect(0, 0, image.Width, image.Height))];
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

    private static Rect Frame(Point2f[] quad) => Rect.FromLTRB(
        (int)quad.Min(p => p.X) - Room, (int)quad.Min(p => p.Y) - Room, (int)quad.Max(p => p.X) + Room + 1, (int)quad.Max(p => p.Y) + Room + 1);

    /// <summary>
    /// Tells whether a marker is seen round one four-cornered shape, none being smaller than in the whole picture. Which shapes there are is no matter of the dictionary, so that the
    /// whole picture need not be searched for each.
    /// </summary>
    private static bool Shows(Dictionary dictionary, NativeImage picture, Rect shape)
    {
        var parameters = new DetectorParameters();
        parameters.MinMarkerPerimeterRate *= (double)Math.Max(picture.Mat.Width, picture.Mat.Height) / Math.Max(shape.Width, shape.Height);
        using var detector = new ArucoDetector(dictionary, parameters, new RefineParameters());
        using var cut = NativeImage.Own(new Mat(picture.Mat, shape));
        detector.DetectMarkers(cut.Mat, out var corners, out _, out _);
        return corners.Length > 0;
    }
}
