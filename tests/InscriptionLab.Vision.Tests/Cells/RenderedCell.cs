using System;
using System.Threading.Tasks;
using InscriptionLab.Cells;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Vision.Tests.Rendering;
using OpenCvSharp;

namespace InscriptionLab.Vision.Tests.Cells;

/// <summary>
/// A drawn photo of a cell beside a scale with exact truth: a washer on a table, a plate with a hole below its rim, a flat scale.
/// Rays are traced through sub-pixels in linear light; blur, noise, sRGB and JPEG follow. World frame as <see cref="PlaneCamera"/>: the scale lies at Z = 0.
/// </summary>
internal sealed record RenderedCell
{
    private const int Sub = 3;
    private const double CentreX = 0;
    private const double CentreY = -28;

    /// <summary>Gets the seed of noise and texture.</summary>
    public int Seed { get; init; } = 1;

    public int Width { get; init; } = 960;

    public int Height { get; init; } = 720;

    /// <summary>Gets the focal length in pixels.</summary>
    public double Focal { get; init; } = 1500;

    /// <summary>Gets the camera's distance in millimetres.</summary>
    public double Distance { get; init; } = 190;

    public double TiltDegrees { get; init; } = 6;

    /// <summary>Gets the direction of the tilt in the picture, in degrees.</summary>
    public double TiltDirectionDegrees { get; init; } = 40;

    public double RollDegrees { get; init; } = 8;

    /// <summary>Gets how far from the world's origin toward the cell the camera looks, in millimetres.</summary>
    public double Aim { get; init; }

    public double OuterMillimetres { get; init; } = 40;

    public double ClearMillimetres { get; init; } = 29;

    public double StopMillimetres { get; init; } = 15;

    /// <summary>Gets the diameter up to which the rim is darker, as a retaining ring may be; 0 for none.</summary>
    public double StepMillimetres { get; init; }

    /// <summary>Gets the depth of the stop below the rim in millimetres.</summary>
    public double StopDepth { get; init; } = 2.5;

    /// <summary>Gets how far the stop's centre lies beside the axis, in millimetres along X.</summary>
    public double StopShift { get; init; }

    /// <summary>Gets the height of the rim above the scale in millimetres.</summary>
    public double RimHeight { get; init; }

    /// <summary>Gets the height of the rim above the table in millimetres.</summary>
    public double CellHeight { get; init; } = 8;

    /// <summary>Gets the kind of scale; null for a photo without one.</summary>
    public ScaleKind? Scale { get; init; } = ScaleKind.Checkerboard;

    /// <summary>Gets the true size of what the scale calls a millimetre.</summary>
    public double ScaleFactor { get; init; } = 1;

    public bool CellPresent { get; init; } = true;

    public double BlurPixels { get; init; } = 0.6;

    /// <summary>Gets the further blur of everything beside the cell, as where the camera focused on the rim.</summary>
    public double TableBlurPixels { get; init; }

    public double Noise { get; init; } = 0.01;

    public int JpegQuality { get; init; } = 88;

    public double RimLight { get; init; } = 0.42;

    public double PlateLight { get; init; } = 0.035;

    /// <summary>Gets the pitch of a thread that lies in the cell's place, its crests level with the scale, in millimetres; null for a cell.</summary>
    public double? ThreadPitch { get; init; }

    /// <summary>Gets the camera.</summary>
    public PlaneCamera Camera
    {
        get
        {
            var (s, c) = Math.SinCos(RollDegrees * Math.PI / 180);
            var flat = new PlaneCamera(Focal, new PixelPoint((Width - 1) / 2.0, (Height - 1) / 2.0), new Vector3D(c, -s, 0), new Vector3D(s, c, 0), new Vector3D(0, 0, 1), new Vector3D(0, 0, Distance));
            var (ds, dc) = Math.SinCos(TiltDirectionDegrees * Math.PI / 180);
            var tilt = TiltDegrees * Math.PI / 180;
            var turned = flat.Turned(new Vector3D(dc * tilt, ds * tilt, 0));
            return turned with { Shift = new Vector3D(turned.Row0.Y * Aim, turned.Row1.Y * Aim, Distance + (turned.Row2.Y * Aim)) };
        }
    }

    /// <summary>Gives where the photo shows the two dots of a strip.</summary>
    public (PixelPoint Near, PixelPoint Far) Dots
    {
        get
        {
            PixelPoint At(double x) => Camera.Project(new Vector3D((x - LeftOf(ScaleKind.Points)) * ScaleFactor, (5 + 4) * ScaleFactor, 0));
            return (At(5), At(5 + RenderedFlats.DotDistance));
        }
    }

    /// <summary>Draws the photo.</summary>
    public Photo Draw()
    {
        var camera = Camera;
        var pixels = new float[Height * Width * 3];
        Parallel.For(0, Height, row =>
        {
            for (var column = 0; column < Width; column++)
            {
                var (b, g, r) = (0.0, 0.0, 0.0);
                for (var i = 0; i < Sub * Sub; i++)
                {
                    var at = new PixelPoint(column + (((i % Sub) + 0.5) / Sub) - 0.5, row + (((i / Sub) + 0.5) / Sub) - 0.5);
                    var light = Light(camera, at);
                    (b, g, r) = (b + light.B, g + light.G, r + light.R);
                }

                var o = ((row * Width) + column) * 3;
                const double Share = 1.0 / (Sub * Sub);
                (pixels[o], pixels[o + 1], pixels[o + 2]) = ((float)(b * Share), (float)(g * Share), (float)(r * Share));
            }
        });
        if (TableBlurPixels > 0)
        {
            SoftenTable(camera, pixels);
        }

        return Darkroom.Develop(pixels, Width, Height, BlurPixels, Noise, Seed, JpegQuality);
    }

    /// <summary>Gives how far left of the world's origin a scale begins, in millimetres.</summary>
    private static double LeftOf(ScaleKind kind) => kind switch
    {
        ScaleKind.Card => 45,
        ScaleKind.Id1 => RenderedFlats.CardLength / 2,
        ScaleKind.Disc => RenderedFlats.DiscMillimetres / 2,
        _ => 25,
    };

    private static double Hash(double x, double y)
    {
        var v = Math.Sin((x * 12.9898) + (y * 78.233)) * 43758.5453;
        return v - Math.Floor(v);
    }

    private void SoftenTable(PlaneCamera camera, float[] pixels)
    {
        using var sharp = Mat.FromPixelData(Height, Width, MatType.CV_32FC3, pixels);
        using var soft = new Mat();
        Cv2.GaussianBlur(sharp, soft, new Size(0, 0), TableBlurPixels);
        soft.GetArray(out Vec3f[] values);
        for (var i = 0; i < values.Length; i++)
        {
            if (Beside(camera.BackProject(new PixelPoint(i % Width, i / Width), -RimHeight), 0) > (OuterMillimetres / 2) + 1)
            {
                (pixels[3 * i], pixels[(3 * i) + 1], pixels[(3 * i) + 2]) = (values[i].Item0, values[i].Item1, values[i].Item2);
            }
        }
    }

    private static (double B, double G, double R) Grey(double v) => (v, v, v);

    private static (double B, double G, double R) Brass(double v) => (0.35 * v, 0.75 * v, v);

    private static double Checker(double x, double y)
    {
        // Seven by five squares of 5 mm with a margin of 5 mm.
        const double Pitch = 5;
        const double White = 0.75;
        const double Black = 0.04;
        var (i, j) = (Math.Floor(x / Pitch), Math.Floor(y / Pitch));
        return i < 0 || j < 0 || i > 6 || j > 4 || (((int)i + (int)j) & 1) == 1 ? White : Black;
    }

    private static double Rule(double x, double y)
    {
        const double Light = 0.7;
        const double HalfTick = 0.1;
        var tick = Math.Round(x);
        if (tick is < 0 or > 50 || Math.Abs(x - tick) > HalfTick)
        {
            return Light;
        }

        var length = (int)tick % 10 == 0 ? 6 : (int)tick % 5 == 0 ? 4.5 : 3;
        return y >= 0 && y <= length ? 0.05 : Light;
    }

    private (double B, double G, double R) Light(PlaneCamera camera, PixelPoint at)
    {
        if (ThreadPitch is { } pitch)
        {
            var side = camera.BackProject(at, 0);
            if (Math.Abs(side.X) <= 22 && side.Y is >= -34 and <= -8)
            {
                // One flank lit, the other in shade; the helix leans a little.
                var turns = (side.X + (0.02 * side.Y)) / pitch;
                var x = turns - Math.Floor(turns);
                return Brass((0.2 + (x < 0.5 ? 0.3 * x : 0.3 * (1 - x)) + (x < 0.5 ? 0.1 : 0)) * Mottle(side));
            }
        }
        else if (CellPresent)
        {
            var rim = camera.BackProject(at, -RimHeight);
            var radius = Beside(rim, 0);
            if (radius <= OuterMillimetres / 2)
            {
                return radius >= ClearMillimetres / 2 ? Brass((radius < StepMillimetres / 2 ? 0.55 : 1) * RimLight * Mottle(rim)) : Inside(camera, at);
            }
        }

        if (Scale is { } kind)
        {
            var world = camera.BackProject(at, 0);
            var (x, y) = ((world.X / ScaleFactor) + LeftOf(kind), (world.Y / ScaleFactor) - 4);
            var plain = kind switch
            {
                ScaleKind.Id1 => RenderedFlats.Card(x, y),
                ScaleKind.Disc => RenderedFlats.Disc(x, y),
                ScaleKind.Points => RenderedFlats.Dots(x, y),
                _ => null,
            };
            if (plain is { } flat)
            {
                return Grey(flat);
            }

            var (width, height) = kind == ScaleKind.Checkerboard ? (45.0, 35.0) : kind == ScaleKind.Rule ? (60.0, 16.0) : kind == ScaleKind.Card ? (90.0, 34.0) : (40.0, 40.0);
            if (kind is not (ScaleKind.Id1 or ScaleKind.Disc or ScaleKind.Points) && x >= 0 && y >= 0 && x <= width && y <= height)
            {
                return Grey(kind switch
                {
                    ScaleKind.Checkerboard => Checker(x - 5, y - 5),
                    ScaleKind.Rule => Rule(x - 5, y),
                    ScaleKind.Card => RenderedCard.Light(x - 5, y - 5),
                    _ => RenderedMarkers.Light(x, y),
                });
            }
        }

        var table = camera.BackProject(at, CellHeight - RimHeight);
        if (CellPresent && Beside(table, 0) <= OuterMillimetres / 2)
        {
            return Brass(0.06);
        }

        var grain = 0.12 + (0.03 * Math.Sin(table.X * 0.9) * Math.Sin(table.Y * 0.23)) + (0.03 * Hash(Math.Floor(table.X * 4), Math.Floor(table.Y * 4)));
        return (0.5 * grain, 0.7 * grain, grain);
    }

    private (double B, double G, double R) Inside(PlaneCamera camera, PixelPoint at)
    {
        var plate = camera.BackProject(at, StopDepth - RimHeight);
        return Beside(plate, 0) > ClearMillimetres / 2 ? Grey(0.02)
            : Beside(plate, StopShift) > StopMillimetres / 2 ? Grey(PlateLight)
            : Grey(0.004);
    }

    private double Mottle(Vector3D at) =>
        1 + (0.06 * Math.Sin((at.X * 0.7) + Seed) * Math.Cos((at.Y * 0.5) - Seed)) + (0.05 * (Hash(Math.Floor(at.X * 3), Math.Floor(at.Y * 3)) - 0.5));

    private static double Beside(Vector3D at, double shift)
    {
        var (x, y) = (at.X - CentreX - shift, at.Y - CentreY);
        return Math.Sqrt((x * x) + (y * y));
    }
}
