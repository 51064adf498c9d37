using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Native;
using InscriptionLab.Vision.Strips;
using OpenCvSharp;

namespace InscriptionLab.Vision.Turns;

/// <summary>
/// Fills the strip all the way round. Fine detail comes from the one photo that shows a place best: nearest to facing the camera and neither burnt out nor black.
/// Broad light and shade is mixed from all photos (two bands; Burt and Adelson, ACM Transactions on Graphics 2, 1983, 217-236), so that seams draw no lines.
/// </summary>
internal sealed class TurnMosaicBuilder
{
    /// <summary>Most photos of a strip: each place bears the number of its photo in a byte.</summary>
    internal const int MostPhotos = NoOwner;

    private const byte NoOwner = 255;

    /// <summary>Width of the blur that parts broad light from fine detail, in radii.</summary>
    private const double BandWidth = 0.2;

    /// <summary>Width over which burnt-out places make their surroundings unattractive, in radii.</summary>
    private const double BurntWidth = 0.05;

    /// <summary>Grey levels between which a place is well lit.</summary>
    private const byte Darkest = 6;
    private const byte Brightest = 249;

    /// <summary>Power of the quality with which broad light is mixed.</summary>
    private const int MixingPower = 4;

    private readonly TurnSetOptions _options;

    internal TurnMosaicBuilder(TurnSetOptions options) => _options = options;

    internal TurnMosaic Build(
        IReadOnlyList<Photo> photos,
        IReadOnlyList<Tube> tubes,
        ImmutableArray<TurnView> views,
        (double From, double To) range,
        Angle? closure,
        double seamErrorInRadii)
    {
        var half = _options.HalfArc.Radians;
        var start = closure is null ? views.Min(view => -view.Turn.Radians) - half : -half;
        var arc = closure is null
            ? views.Max(view => -view.Turn.Radians) + half - start
            : (2 * Math.PI) + _options.Overlap.Radians;
        var scale = Math.Min(Scale(tubes), Math.Min((_options.MaximumSide - 1) / arc, (_options.MaximumSide - 1) / (range.To - range.From)));
        var canvas = new Canvas(1 + (int)((range.To - range.From) * scale), 1 + (int)(arc * scale));
        var placed = views
            .Select(view => view with { Map = new CylinderStripMap(view.Map.Pose, scale, view.Map.FirstAxial, Angle.FromRadians(start + view.Turn.Radians)) })
            .ToImmutableArray();
        for (var i = 0; i < placed.Length; i++)
        {
            Paint(canvas, photos[placed[i].PhotoIndex], placed[i], (byte)i, half);
        }

        var seen = ShareSeen(canvas, scale);
        return new TurnMosaic(canvas.Finish(), placed, canvas.Owners, scale, seen, closure, PixelLength.FromPixels(seamErrorInRadii * scale));
    }

    /// <summary>The finest scale that a photo offers on the generatrix facing the camera.</summary>
    private static double Scale(IReadOnlyList<Tube> tubes) => tubes.Max(tube =>
    {
        var projection = new CylinderProjection(tube.Pose);
        var from = projection.AxialOf(tube.Axis.Start) ?? 0;
        var to = projection.AxialOf(tube.Axis.End) ?? 0;
        var (x, y) = projection.AlongArc(new SurfacePoint((from + to) / 2, default));
        return Math.Sqrt((x * x) + (y * y));
    });

    private static void Paint(Canvas canvas, Photo photo, TurnView view, byte owner, double half)
    {
        // The arc that the photo shows may come round more than once where the strip is longer than a full turn.
        var map = view.Map;
        var first = map.FirstAround.Radians;
        var last = first + (canvas.Height / map.PixelsPerRadius);
        for (var turn = Math.Ceiling((first - half) / (2 * Math.PI)); (turn * 2 * Math.PI) - half < last; turn++)
        {
            var from = Math.Max(0, (int)Math.Ceiling(((turn * 2 * Math.PI) - half - first) * map.PixelsPerRadius));
            var to = Math.Min(canvas.Height - 1, (int)Math.Floor(((turn * 2 * Math.PI) + half - first) * map.PixelsPerRadius));
            if (to > from)
            {
                PaintRows(canvas, photo, map, owner, from, to - from + 1);
            }
        }
    }

    private static void PaintRows(Canvas canvas, Photo photo, CylinderStripMap map, byte owner, int firstRow, int rows)
    {
        var piece = new CylinderStripMap(map.Pose, map.PixelsPerRadius, map.FirstAxial, Angle.FromRadians(map.FirstAround.Radians + (firstRow / map.PixelsPerRadius)));
        var width = canvas.Width;
        var gray = PhotoSampler.Sample(photo, piece, width, rows);
        using var native = NativeImage.View(gray);
        using var floats = native.Apply((from, to) => from.ConvertTo(to, MatType.CV_32FC1));
        using var broad = floats.Apply((from, to) => Cv2.GaussianBlur(from, to, new Size(0, 0), BandWidth * map.PixelsPerRadius, 0, BorderTypes.Replicate));
        using var lit = NativeImage.Own(new Mat(rows, width, MatType.CV_32FC1));
        var good = lit.Mat.AsSpan<float>();
        for (var i = 0; i < good.Length; i++)
        {
            good[i] = gray.Pixels[i] is >= Darkest and <= Brightest ? 1 : 0;
        }

        using var smooth = lit.Apply((from, to) => Cv2.GaussianBlur(from, to, new Size(0, 0), BurntWidth * map.PixelsPerRadius, 0, BorderTypes.Replicate));
        var quality = smooth.Mat.AsSpan<float>();
        var low = broad.Mat.AsSpan<float>();
        var run = new PixelPoint[width];
        for (var row = 0; row < rows; row++)
        {
            var facing = Math.Cos(piece.FirstAround.Radians + (row / map.PixelsPerRadius));
            piece.FillRun(new PixelPoint(0, row), 1, 0, run);
            for (var x = 0; x < width; x++)
            {
                var inside = run[x].X >= 0 && run[x].Y >= 0 && run[x].X <= photo.Gray.Width - 1 && run[x].Y <= photo.Gray.Height - 1;
                if (inside)
                {
                    var at = (row * width) + x;
                    canvas.Offer(((firstRow + row) * width) + x, gray.Pixels[at], low[at], (float)facing * Math.Max(quality[at], 0.01f), owner);
                }
            }
        }
    }

    /// <summary>Rows of one full turn in which some photo shows at least half of the length that is shown anywhere.</summary>
    private static double ShareSeen(Canvas canvas, double scale)
    {
        var turn = Math.Min(canvas.Height, (int)Math.Round(2 * Math.PI * scale));
        var shown = new int[turn];
        for (var row = 0; row < turn; row++)
        {
            shown[row] = canvas.Owners.AsSpan(row * canvas.Width, canvas.Width).ToArray().Count(owner => owner != NoOwner);
        }

        var most = shown.Max();
        return Math.Min(1, shown.Count(count => count * 2 >= most && count > 0) / (2 * Math.PI * scale));
    }

    /// <summary>The strip being filled.</summary>
    private sealed class Canvas
    {
        private readonly float[] _quality;
        private readonly float[] _fine;
        private readonly float[] _broad;
        private readonly float[] _weight;

        internal Canvas(int width, int height)
        {
            Width = width;
            Height = height;
            _quality = new float[width * height];
            _fine = new float[width * height];
            _broad = new float[width * height];
            _weight = new float[width * height];
            Owners = new byte[width * height];
            Array.Fill(Owners, NoOwner);
        }

        internal int Width { get; }

        internal int Height { get; }

        internal byte[] Owners { get; }

        internal void Offer(int at, float level, float broad, float quality, byte owner)
        {
            if (quality > _quality[at])
            {
                _quality[at] = quality;
                _fine[at] = level - broad;
                Owners[at] = owner;
            }

            var weight = MathF.Pow(quality, MixingPower);
            _broad[at] += weight * broad;
            _weight[at] += weight;
        }

        internal GrayImage Finish()
        {
            var pixels = new byte[Owners.Length];
            for (var i = 0; i < pixels.Length; i++)
            {
                pixels[i] = Owners[i] == NoOwner ? (byte)0 : (byte)Math.Clamp(MathF.Round((_broad[i] / _weight[i]) + _fine[i]), 0, 255);
            }

            return new GrayImage(Width, Height, pixels);
        }
    }
}
