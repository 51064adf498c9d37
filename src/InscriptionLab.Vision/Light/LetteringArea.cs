using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Readings;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Light;

/// <summary>The part of a photo on which it is judged, cut out of the photo without resampling: the lines of lettering, or the middle of the tube, or the middle of the photo.</summary>
internal sealed class LetteringArea : IDisposable
{
    /// <summary>Room round the letters, as a share of their height.</summary>
    private const double Margin = 0.3;

    /// <summary>Room round the letters in the cut-out picture, so that blurs know their surroundings.</summary>
    private const int Border = 24;

    /// <summary>Share of the way from the axis to the outline that counts as the middle of a tube.</summary>
    private const double MiddleOfTube = 0.6;

    /// <summary>How far the last letter of a straight line may be turned against the first, in radians: 17 degrees.</summary>
    private const double LargestTurn = 0.3;

    private LetteringArea(NativeImage gray, bool[] inside, double height, (double X, double Y)? along, Rect frame)
    {
        Gray = gray;
        Inside = inside;
        Height = height;
        Along = along;
        Frame = frame;
    }

    /// <summary>Gets the grey levels, as 32-bit floats.</summary>
    internal NativeImage Gray { get; }

    /// <summary>Gets which pixels belong to the area.</summary>
    internal bool[] Inside { get; }

    /// <summary>Gets the height of the letters in photo pixels, a guess where nothing was read.</summary>
    internal double Height { get; }

    /// <summary>Gets the reading direction in the photo, a unit vector; null where nothing was read.</summary>
    internal (double X, double Y)? Along { get; }

    /// <summary>Gets where the cut-out picture lies in the photo.</summary>
    internal Rect Frame { get; }

    internal static LetteringArea Of(Photo photo, Tube? tube, Readings.Reading reading)
    {
        var lines = reading.Lines.Where(line => line.Letters.Any(letter => !letter.IsSpace)).ToList();
        var patches = lines.Count > 0 ? lines.SelectMany(Patches).ToList() : [Middle(photo, tube)];
        var height = lines.Count > 0 ? Median(lines.Select(line => line.Line.InkHeight.Pixels)) : (tube?.Diameter.Pixels ?? photo.Gray.Height / 3.0) / 18;
        var points = patches.SelectMany(patch => patch).ToList();
        var frame = new Rect(0, 0, photo.Gray.Width, photo.Gray.Height)
            & Rect.FromLTRB((int)points.Min(p => p.X) - Border, (int)points.Min(p => p.Y) - Border, (int)points.Max(p => p.X) + Border + 1, (int)points.Max(p => p.Y) + Border + 1);
        using var whole = NativeImage.From(photo.Gray);
        using var cut = NativeImage.Own(new Mat(whole.Mat, frame));
        var gray = cut.Apply((from, to) => from.ConvertTo(to, MatType.CV_32FC1));
        using var mask = NativeImage.Own(new Mat(frame.Height, frame.Width, MatType.CV_8UC1, new Scalar(0)));
        foreach (var patch in patches)
        {
            Cv2.FillConvexPoly(mask.Mat, patch.Select(p => new Point((int)Math.Round(p.X) - frame.X, (int)Math.Round(p.Y) - frame.Y)), new Scalar(255));
        }

        return new LetteringArea(gray, [.. mask.Mat.AsSpan<byte>().ToArray().Select(value => value != 0)], Math.Max(4, height), lines.Count > 0 ? Direction(lines) : null, frame);
    }

    public void Dispose() => Gray.Dispose();

    /// <summary>One patch a line, or one a letter where the line bends in the photo.</summary>
    private static IEnumerable<List<PixelPoint>> Patches(LineReading line)
    {
        var letters = line.Letters.Where(letter => !letter.IsSpace && letter.InPhoto != default).Select(letter => letter.InPhoto).ToList();
        var box = line.Line.InPhoto;
        var room = Margin * line.Line.InkHeight.Pixels;
        return letters.Count == 0 ? [Patch(box, box, room)]
            : Bends(letters[0], letters[^1]) ? letters.Select(letter => Patch(letter, letter, room))
            : [Patch(letters[0], letters[^1], room)];
    }

    private static bool Bends(Quad first, Quad last)
    {
        double Direction(Quad box) => Math.Atan2(box.TopRight.Y - box.TopLeft.Y, box.TopRight.X - box.TopLeft.X);
        return Math.Abs(Math.IEEERemainder(Direction(last) - Direction(first), 2 * Math.PI)) > LargestTurn;
    }

    private static List<PixelPoint> Patch(Quad first, Quad last, double room)
    {
        return
        [
            Away(first.TopLeft, last.TopRight, first.BottomLeft, room),
            Away(last.TopRight, first.TopLeft, last.BottomRight, room),
            Away(last.BottomRight, first.BottomLeft, last.TopRight, room),
            Away(first.BottomLeft, last.BottomRight, first.TopLeft, room),
        ];
    }

    /// <summary>A corner pushed away from its two neighbours.</summary>
    private static PixelPoint Away(PixelPoint corner, PixelPoint beside, PixelPoint below, double room)
    {
        var (x, y) = (corner.X, corner.Y);
        foreach (var other in (ReadOnlySpan<PixelPoint>)[beside, below])
        {
            var length = Math.Max(1, corner.DistanceTo(other).Pixels);
            x += room * (corner.X - other.X) / length;
            y += room * (corner.Y - other.Y) / length;
        }

        return new PixelPoint(x, y);
    }

    private static List<PixelPoint> Middle(Photo photo, Tube? tube)
    {
        var (width, height) = (photo.Gray.Width, photo.Gray.Height);
        if (tube is null)
        {
            return [new(width / 4.0, height / 4.0), new(width * 3 / 4.0, height / 4.0), new(width * 3 / 4.0, height * 3 / 4.0), new(width / 4.0, height * 3 / 4.0)];
        }

        PixelPoint Between(PixelPoint axis, PixelPoint outline) => new(
            Math.Clamp(axis.X + (MiddleOfTube * (outline.X - axis.X)), 0, width - 1),
            Math.Clamp(axis.Y + (MiddleOfTube * (outline.Y - axis.Y)), 0, height - 1));
        return
        [
            Between(tube.Axis.Start, tube.Silhouettes[0].Start), Between(tube.Axis.End, tube.Silhouettes[0].End),
            Between(tube.Axis.End, tube.Silhouettes[1].End), Between(tube.Axis.Start, tube.Silhouettes[1].Start),
        ];
    }

    private static (double X, double Y)? Direction(List<LineReading> lines)
    {
        var (x, y) = (0.0, 0.0);
        foreach (var box in lines.Select(line => line.Line.InPhoto))
        {
            x += box.TopRight.X - box.TopLeft.X + box.BottomRight.X - box.BottomLeft.X;
            y += box.TopRight.Y - box.TopLeft.Y + box.BottomRight.Y - box.BottomLeft.Y;
        }

        var length = Math.Sqrt((x * x) + (y * y));
        return length > 0 ? (x / length, y / length) : null;
    }

    internal static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToList();
        return sorted.Count == 0 ? 0 : sorted[sorted.Count / 2];
    }
}
