using System;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Light;

/// <summary>The slope of grey levels at each pixel (Scharr's kernels, normed to grey levels a pixel).</summary>
internal sealed class SlopeField
{
    private const double Norm = 1 / 32.0;

    private readonly float[] _x;
    private readonly float[] _y;
    private readonly int _width;
    private readonly int _height;

    internal SlopeField(NativeImage gray)
    {
        using var x = gray.Apply((from, to) => Cv2.Scharr(from, to, MatType.CV_32F, 1, 0, Norm));
        using var y = gray.Apply((from, to) => Cv2.Scharr(from, to, MatType.CV_32F, 0, 1, Norm));
        (_x, _y) = (x.Mat.AsSpan<float>().ToArray(), y.Mat.AsSpan<float>().ToArray());
        (_width, _height) = (gray.Mat.Width, gray.Mat.Height);
    }

    internal (float X, float Y) this[int at] => (_x[at], _y[at]);

    internal double Steepness(int at) => Math.Sqrt((_x[at] * _x[at]) + (_y[at] * _y[at]));

    internal double Direction(int at) => Math.Atan2(_y[at], _x[at]);

    internal bool IsInner(int at) => at % _width > 0 && at % _width < _width - 1 && at / _width > 0 && at / _width < _height - 1;

    /// <summary>Tells whether no neighbour along the slope is steeper.</summary>
    internal bool IsCrest(int at)
    {
        var steep = Steepness(at);
        var (dx, dy) = ((int)Math.Round(_x[at] / Math.Max(steep, 1e-6)), (int)Math.Round(_y[at] / Math.Max(steep, 1e-6)));
        var step = (dy * _width) + dx;
        return steep >= Steepness(at + step) && steep >= Steepness(at - step);
    }
}
