using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Light;

/// <summary>One picture of a <see cref="LetteringArea"/>, cut out of the photo: pixels averaged down where its letters are tall, otherwise as they are.</summary>
internal sealed class LetteringPart : IDisposable
{
    /// <summary>Room round the letters in the cut-out picture, pixels, so that blurs know their surroundings.</summary>
    private const int Border = 24;

    private readonly byte[] _inside;

    private LetteringPart(NativeImage gray, byte[] inside, Rect frame, double scale)
    {
        Gray = gray;
        _inside = inside;
        Frame = frame;
        Scale = scale;
    }

    /// <summary>Gets the grey levels, as 32-bit floats.</summary>
    internal NativeImage Gray { get; }

    /// <summary>Gets where the picture lies in the photo.</summary>
    internal Rect Frame { get; }

    /// <summary>Gets the pixels of the picture for one of the photo.</summary>
    internal double Scale { get; }

    /// <summary>Gets which pixels belong to the area: those that are not zero.</summary>
    internal ReadOnlySpan<byte> Inside => _inside;

    internal int Width => Gray.Mat.Width;

    internal int Height => Gray.Mat.Height;

    /// <summary>Gives the place in <see cref="Inside"/> of a photo pixel, counted from the frame's corner.</summary>
    internal int IndexOf(int x, int y) => (Math.Min(Height - 1, (int)(y * Scale)) * Width) + Math.Min(Width - 1, (int)(x * Scale));

    public void Dispose() => Gray.Dispose();

    internal static Rect FrameOf(List<PixelPoint> patch, double scale)
    {
        var room = (int)Math.Ceiling(Border / scale);
        return Rect.FromLTRB((int)patch.Min(p => p.X) - room, (int)patch.Min(p => p.Y) - room, (int)patch.Max(p => p.X) + room + 1, (int)patch.Max(p => p.Y) + room + 1);
    }

    internal static LetteringPart Of(NativeImage photo, Rect frame, List<List<PixelPoint>> patches, double scale)
    {
        var size = new Size(Math.Max(1, (int)Math.Round(frame.Width * scale)), Math.Max(1, (int)Math.Round(frame.Height * scale)));
        using var mask = NativeImage.Own(new Mat(size.Height, size.Width, MatType.CV_8UC1, new Scalar(0)));
        foreach (var patch in patches)
        {
            Cv2.FillConvexPoly(mask.Mat, patch.Select(p => new Point((int)Math.Round((p.X - frame.X) * scale), (int)Math.Round((p.Y - frame.Y) * scale))), new Scalar(255));
        }

        using var cut = NativeImage.Own(new Mat(photo.Mat, frame));
        using var exact = cut.Apply((from, to) => from.ConvertTo(to, MatType.CV_32FC1));
        var inside = mask.Mat.AsSpan<byte>().ToArray();
        return new LetteringPart(exact.Apply((from, to) => Cv2.Resize(from, to, size, 0, 0, InterpolationFlags.Area)), inside, frame, scale);
    }
}
