using System;
using System.Buffers;
using System.Threading;
using InscriptionLab.Imaging;
using OpenCvSharp;

namespace InscriptionLab.Vision.Native;

/// <summary>The one owner of a native picture. Always made into a <c>using var</c>; the compiler's dispose check sees it, as it does not see <see cref="Mat"/>.</summary>
internal sealed class NativeImage : IDisposable
{
    private static int _alive;

    /// <summary>Keeps the pixels of a managed picture in place while this one shows them.</summary>
    private MemoryHandle _held;

    private NativeImage(Mat mat, MemoryHandle held = default)
    {
        Mat = mat;
        _held = held;
        Interlocked.Increment(ref _alive);
    }

    /// <summary>Gets how many native pictures are alive in the process: a test's leak check.</summary>
    internal static int Alive => Volatile.Read(ref _alive);

    /// <summary>Gets the picture; never kept beyond the owner's life.</summary>
    internal Mat Mat { get; }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (!Mat.IsDisposed)
        {
            Interlocked.Decrement(ref _alive);
            Mat.Dispose();
            _held.Dispose();
        }
    }

    /// <summary>Shows a grey picture without copying it: to be read only, since pictures do not change.</summary>
    internal static NativeImage View(GrayImage image) => View(image.Memory, image.Width, image.Height, MatType.CV_8UC1);

    /// <summary>Shows a colour picture (blue, green, red) without copying it: to be read only.</summary>
    internal static NativeImage View(ColourImage image) => View(image.Memory, image.Width, image.Height, MatType.CV_8UC3);

    /// <summary>Copies a colour picture in (blue, green, red).</summary>
    internal static NativeImage From(ColourImage image)
    {
        var mat = new Mat(image.Height, image.Width, MatType.CV_8UC3);
        image.Pixels.CopyTo(System.Runtime.InteropServices.MemoryMarshal.AsBytes(mat.AsSpan<Vec3b>()));
        return new NativeImage(mat);
    }

    /// <summary>Takes over a picture that a native call made.</summary>
    internal static NativeImage Own(Mat mat) => new(mat);

    /// <summary>Makes an empty picture; its values are what memory held.</summary>
    internal static NativeImage Empty(int rows, int columns, MatType type) => new(new Mat(rows, columns, type));

    /// <summary>Runs a native call that fills a new picture from this one.</summary>
    internal NativeImage Apply(Action<Mat, Mat> call)
    {
        var target = new Mat();
        try
        {
            call(Mat, target);
            return new NativeImage(target);
        }
        catch
        {
            target.Dispose();
            throw;
        }
    }

    /// <summary>Blurs with a Gaussian, the same both ways; beyond the border the picture goes on as its outermost pixels.</summary>
    /// <param name="sigma">Standard deviation in pixels.</param>
    internal NativeImage Blurred(double sigma) => Blurred(sigma, sigma);

    /// <summary>Blurs with a Gaussian; beyond the border the picture goes on as its outermost pixels.</summary>
    /// <param name="sigmaX">Standard deviation along rows, in pixels.</param>
    /// <param name="sigmaY">Standard deviation along columns.</param>
    internal NativeImage Blurred(double sigmaX, double sigmaY) =>
        Apply((from, to) => Cv2.GaussianBlur(from, to, new Size(0, 0), sigmaX, sigmaY, BorderTypes.Replicate));

    /// <summary>Copies an 8-bit, one-channel picture out.</summary>
    internal GrayImage ToGray()
    {
        using var whole = Mat.IsContinuous() ? null : Mat.Clone();
        return new GrayImage(Mat.Width, Mat.Height, (whole ?? Mat).AsSpan<byte>().ToArray());
    }

    /// <summary>Copies an 8-bit, three-channel picture out.</summary>
    internal ColourImage ToColour()
    {
        using var whole = Mat.IsContinuous() ? null : Mat.Clone();
        return new ColourImage(Mat.Width, Mat.Height, System.Runtime.InteropServices.MemoryMarshal.AsBytes((whole ?? Mat).AsSpan<Vec3b>()).ToArray());
    }

    private static unsafe NativeImage View(ReadOnlyMemory<byte> pixels, int width, int height, MatType type)
    {
        var held = pixels.Pin();
        try
        {
            return new NativeImage(Mat.FromPixelData(height, width, type, (IntPtr)held.Pointer), held);
        }
        catch
        {
            held.Dispose();
            throw;
        }
    }
}
