using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Readings;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Light;

/// <summary>
/// The part of a photo on which it is judged: the lines of lettering, or the middle of the tube, or the middle of the photo. Tall letters are brought down: what is finer than a
/// fortieth of a letter no meter looks at, and so the time does not grow with the photo.
/// </summary>
internal sealed class LetteringArea : IDisposable
{
    /// <summary>Height to which taller letters are brought down, pixels: a fortieth of it, the finest that <see cref="BlurMeter"/> looks at, is 1.6 pixels, against which averaging pixels blurs by a third of a pixel.</summary>
    private const double Tallest = 64;

    /// <summary>Pixels to which the middle of a tube or photo is brought down where nothing was read (a choice: as many as three long lines of letters have).</summary>
    private const double MostPixels = 1e6;

    /// <summary>Room round the letters, as a share of their height.</summary>
    private const double Margin = 0.3;

    /// <summary>Share of the way from the axis to the outline that counts as the middle of a tube.</summary>
    private const double MiddleOfTube = 0.6;

    /// <summary>How far the last letter of a straight line may be turned against the first, in radians: 17 degrees.</summary>
    private const double LargestTurn = 0.3;

    private LetteringArea(ImmutableArray<LetteringPart> parts, double height, double scale, (double X, double Y)? along)
    {
        Parts = parts;
        Height = height;
        Scale = scale;
        Along = along;
    }

    /// <summary>Gets the pictures of the area: one, or several where lines lie far apart.</summary>
    internal ImmutableArray<LetteringPart> Parts { get; }

    /// <summary>Gets the height of the letters in pixels of the parts, a guess where nothing was read.</summary>
    internal double Height { get; }

    /// <summary>Gets the pixels of the parts for one of the photo; 1 or less.</summary>
    internal double Scale { get; }

    /// <summary>Gets the reading direction in the photo, a unit vector; null where nothing was read.</summary>
    internal (double X, double Y)? Along { get; }

    internal static LetteringArea Of(Photo photo, Tube? tube, Readings.Reading reading)
    {
        var lines = reading.Lines.Where(line => line.Letters.Any(letter => !letter.IsSpace)).ToList();
        var patches = lines.Count > 0 ? lines.SelectMany(Patches).ToList() : [Middle(photo, tube)];
        var height = Math.Max(4, lines.Count > 0 ? Median(lines.Select(line => line.Line.InkHeight.Pixels)) : (tube?.Diameter.Pixels ?? photo.Gray.Height / 3.0) / 18);
        var scale = Math.Min(1, Tallest / height);
        var groups = Groups(patches, new Rect(0, 0, photo.Gray.Width, photo.Gray.Height), scale);
        if (lines.Count == 0)
        {
            scale = Math.Min(scale, Math.Sqrt(MostPixels / Math.Max(1, groups.Sum(group => (double)group.Frame.Width * group.Frame.Height))));
        }

        using var whole = NativeImage.View(photo.Gray);
        var along = lines.Count > 0 ? Direction(lines) : null;
        return new LetteringArea(AllOrNone.Of(groups.Select(group => LetteringPart.Of(whole, group.Frame, group.Patches, scale))), height * scale, scale, along);
    }

    public void Dispose()
    {
        foreach (var part in Parts)
        {
            part.Dispose();
        }
    }

    internal static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToList();
        return sorted.Count == 0 ? 0 : sorted[sorted.Count / 2];
    }

    /// <summary>Patches whose frames touch, together, so that no pixel counts twice.</summary>
    private static List<(Rect Frame, List<List<PixelPoint>> Patches)> Groups(List<List<PixelPoint>> patches, Rect photo, double scale)
    {
        var groups = new List<(Rect Frame, List<List<PixelPoint>> Patches)>();
        foreach (var patch in patches)
        {
            var group = (Frame: LetteringPart.FrameOf(patch, scale) & photo, Patches: new List<List<PixelPoint>> { patch });
            while (groups.FindIndex(other => (other.Frame & group.Frame) is { Width: > 0, Height: > 0 }) is >= 0 and var at)
            {
                group = (groups[at].Frame | group.Frame, [.. groups[at].Patches, .. group.Patches]);
                groups.RemoveAt(at);
            }

            if (group.Frame is { Width: > 0, Height: > 0 })
            {
                groups.Add(group);
            }
        }

        return groups;
    }

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
}
