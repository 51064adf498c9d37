using System;
using System.Linq;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Turns;

/// <summary>Fourier transforms of a picture of details, padded with zeros: of weight times detail, of weight, of weight times detail squared.</summary>
internal sealed class DetailSpectra : IDisposable
{
    internal DetailSpectra(DetailPicture picture, int rows, int columns)
    {
        (Rows, Columns) = (rows, columns);
        Func<float[]>[] values = [() => picture.Weighted(0), () => picture.Weights, () => picture.Weighted(1)];
        var spectra = AllOrNone.Of(values.Select(of => Spectrum(of(), picture, rows, columns)));
        (Detail, Weight, Square) = (spectra[0], spectra[1], spectra[2]);
    }

    internal int Rows { get; }

    internal int Columns { get; }

    internal NativeImage Detail { get; }

    internal NativeImage Weight { get; }

    internal NativeImage Square { get; }

    public void Dispose()
    {
        Detail.Dispose();
        Weight.Dispose();
        Square.Dispose();
    }

    private static NativeImage Spectrum(float[] values, DetailPicture picture, int rows, int columns)
    {
        using var padded = NativeImage.Own(new Mat(rows, columns, MatType.CV_32FC1, Scalar.All(0)));
        var target = padded.Mat.AsSpan<float>();
        for (var row = 0; row < picture.Height; row++)
        {
            values.AsSpan(row * picture.Width, picture.Width).CopyTo(target[(row * columns)..]);
        }

        return padded.Apply((from, to) => Cv2.Dft(from, to, DftFlags.ComplexOutput));
    }
}
