using InscriptionLab.Photos;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Photos;

/// <summary>Measures focus and exposure of a grey picture.</summary>
internal static class PhotoQualityMeter
{
    private const int BurntFrom = 250;
    private const int BlackUpTo = 5;

    /// <summary>Measures.</summary>
    /// <param name="gray">8-bit grey picture.</param>
    internal static PhotoQuality Measure(NativeImage gray)
    {
        using var edges = gray.Apply((from, to) => Cv2.Laplacian(from, to, MatType.CV_16S));
        Cv2.MeanStdDev(edges.Mat, out _, out var deviation);
        using var burnt = gray.Apply((from, to) => Cv2.InRange(from, new Scalar(BurntFrom), new Scalar(255), to));
        using var black = gray.Apply((from, to) => Cv2.InRange(from, new Scalar(0), new Scalar(BlackUpTo), to));
        double pixels = gray.Mat.Total();
        return new PhotoQuality(
            deviation.Val0 * deviation.Val0,
            Cv2.CountNonZero(burnt.Mat) / pixels,
            Cv2.CountNonZero(black.Mat) / pixels);
    }
}
