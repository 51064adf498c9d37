using System;
using System.Linq;
using System.Threading.Tasks;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Measures;
using InscriptionLab.Photos;

namespace InscriptionLab.Vision.Tests.Rendering;

/// <summary>A drawn photo of a tube that lies on a table beside a checkerboard of 5 mm, with dark letters in the shape of bars, and exact truth.</summary>
internal sealed record TubeBesideScale
{
    internal const int Width = 1200;
    internal const int Height = 900;
    private const int Sub = 2;
    private const double Pitch = 5;

    public double Focal { get; init; } = 1500;

    public double Distance { get; init; } = 260;

    public double TiltDegrees { get; init; } = 8;

    public double TiltDirectionDegrees { get; init; } = 70;

    /// <summary>Gets the radius of the tube in millimetres.</summary>
    public double Radius { get; init; } = 15;

    /// <summary>Gets the height of the table below the board's face, in millimetres.</summary>
    public double BoardThickness { get; init; }

    /// <summary>Gets half the tube's length; its ends lie at plus and minus this along X.</summary>
    public double HalfLength { get; init; } = 70;

    /// <summary>Gets where the letters begin and how high they are, along the tube and round it, in millimetres.</summary>
    public double LettersFrom { get; init; } = -40;

    public double LetterHeight { get; init; } = 4;

    private const double AxisY = -24;
    private const double LetterWidth = 3;
    private const double LetterStep = 5;
    private const int Letters = 8;

    /// <summary>Gets the camera; the world's plane of nought is the board's face.</summary>
    public PlaneCamera Camera
    {
        get
        {
            var flat = new PlaneCamera(Focal, new PixelPoint((Width - 1) / 2.0, (Height - 1) / 2.0), new Vector3D(1, 0, 0), new Vector3D(0, 1, 0), new Vector3D(0, 0, 1), new Vector3D(0, 0, Distance));
            var (s, c) = Math.SinCos(TiltDirectionDegrees * Math.PI / 180);
            var tilt = TiltDegrees * Math.PI / 180;
            return flat.Turned(new Vector3D(c * tilt, s * tilt, 0));
        }
    }

    private double AxisZ => BoardThickness - Radius;

    /// <summary>Gives the two outlines of the tube over its length, exactly.</summary>
    public (PixelSegment First, PixelSegment Second) Outlines
    {
        get
        {
            var camera = Camera;
            var (dy, dz) = (camera.Centre.Y - AxisY, camera.Centre.Z - AxisZ);
            var far = Math.Sqrt((dy * dy) + (dz * dz));
            var (to, half) = (Math.Atan2(dy, -dz), Math.Acos(Radius / far));
            PixelPoint At(double x, double angle) => camera.Project(new Vector3D(x, AxisY + (Radius * Math.Sin(angle)), AxisZ - (Radius * Math.Cos(angle))));
            return (new PixelSegment(At(-HalfLength, to - half), At(HalfLength, to - half)), new PixelSegment(At(-HalfLength, to + half), At(HalfLength, to + half)));
        }
    }

    /// <summary>Gives the boxes of the letters: they stand along the tube, their tops away from the board, about the line that faces straight up.</summary>
    public Quad[] Boxes
    {
        get
        {
            var camera = Camera;
            var turn = LetterHeight / 2 / Radius;
            PixelPoint At(double x, double angle) => camera.Project(new Vector3D(x, AxisY + (Radius * Math.Sin(angle)), AxisZ - (Radius * Math.Cos(angle))));
            return [.. Enumerable.Range(0, Letters).Select(i =>
            {
                var x = LettersFrom + (LetterStep * i);
                return new Quad(At(x, -turn), At(x + LetterWidth, -turn), At(x + LetterWidth, turn), At(x, turn));
            })];
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
                var light = 0.0;
                for (var i = 0; i < Sub * Sub; i++)
                {
                    light += Light(camera, new PixelPoint(column + (((i % Sub) + 0.5) / Sub) - 0.5, row + (((i / Sub) + 0.5) / Sub) - 0.5));
                }

                var o = ((row * Width) + column) * 3;
                var grey = (float)(light / (Sub * Sub));
                (pixels[o], pixels[o + 1], pixels[o + 2]) = (0.8f * grey, 0.95f * grey, grey);
            }
        });
        return Darkroom.Develop(pixels, Width, Height, 0.6, 0.008, 3, 90);
    }

    private double Light(PlaneCamera camera, PixelPoint at)
    {
        var eye = camera.Centre;
        var ray = (camera.BackProject(at, 0) - eye).Normalised();
        var (fy, fz) = (eye.Y - AxisY, eye.Z - AxisZ);
        var (a, b, c) = ((ray.Y * ray.Y) + (ray.Z * ray.Z), (ray.Y * fy) + (ray.Z * fz), (fy * fy) + (fz * fz) - (Radius * Radius));
        var root = (b * b) - (a * c);
        if (root > 0)
        {
            var hit = eye + (ray * ((-b - Math.Sqrt(root)) / a));
            if (Math.Abs(hit.X) <= HalfLength)
            {
                var angle = Math.Atan2(hit.Y - AxisY, AxisZ - hit.Z);
                var (letter, inside) = (Math.Floor((hit.X - LettersFrom) / LetterStep), hit.X - LettersFrom);
                var cut = letter >= 0 && letter < Letters && inside - (LetterStep * letter) < LetterWidth && Math.Abs(angle) * Radius < LetterHeight / 2;
                return cut ? 0.08 : 0.25 + (0.3 * Math.Max(0, Math.Cos(angle + 0.5)));
            }
        }

        var board = camera.BackProject(at, 0);
        var (x, y) = (board.X + 25, board.Y - 6);
        if (x is >= 0 and <= 50 && y is >= 0 and <= 40)
        {
            var (i, j) = (Math.Floor(x / Pitch), Math.Floor(y / Pitch));
            return i is < 1 or > 8 || j is < 1 or > 6 || (((int)i + (int)j) & 1) == 1 ? 0.7 : 0.05;
        }

        return 0.1;
    }
}
