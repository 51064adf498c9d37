using System;
using System.Collections.Immutable;
using System.Linq;
using System.Threading.Tasks;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using OpenCvSharp;

namespace InscriptionLab.Vision.Tests.Rendering;

/// <summary>
/// A turned metal ring with letters cut round its flat face, on a table: grooves with sloped sides under one lamp, turning marks, bevelled edges, a well with
/// a plate or glass below its opening. Rays are traced through sub-pixels in linear light; <see cref="Darkroom"/> does the rest.
/// </summary>
internal sealed record EngravedRing(RingScene Scene, ImmutableArray<RingText> Texts)
{
    private const int Sub = 2;

    /// <summary>Width of the bevels, in outer radii.</summary>
    private const double Bevel = 0.02;

    public int Width { get; init; } = 1100;

    public int Height { get; init; } = 900;

    public int Seed { get; init; } = 1;

    /// <summary>Gets the metal's colour in linear light: blue, green, red.</summary>
    public (double B, double G, double R) Metal { get; init; } = (0.24, 0.52, 0.72);

    /// <summary>Gets the direction to the lamp in the camera's frame; the camera looks along +Z.</summary>
    public Vector3D Lamp { get; init; } = new(-0.6, -0.5, -0.62);

    /// <summary>Gets what fills the grooves: its share of the metal's light; null for bare grooves.</summary>
    public double? Fill { get; init; } = 0.12;

    /// <summary>Gets the slope of the grooves' sides.</summary>
    public double Slope { get; init; } = 0.7;

    /// <summary>Gets how strong the marks of turning are.</summary>
    public double Turning { get; init; } = 0.05;

    /// <summary>Gets a value indicating whether the face is closed, as a cap's is.</summary>
    public bool Closed { get; init; }

    public double PlateLight { get; init; } = 0.05;

    public double TableLight { get; init; } = 0.14;

    public double BlurPixels { get; init; } = 0.6;

    public double Noise { get; init; } = 0.01;

    public int JpegQuality { get; init; } = 90;

    private double MiddleRadius => (1 + Scene.Inner) / 2;

    /// <summary>Gives the letters, spaces left out, with their exact boxes in the photo.</summary>
    public ImmutableArray<(int Text, char Letter, Quad Box)> Truth() =>
    [
        .. Texts.SelectMany((text, index) => text.Letters(MiddleRadius).Select(letter =>
        {
            PixelPoint At(int corner) => Scene.Project(letter.Box[corner].Radius, letter.Box[corner].Around);
            return (index, letter.Letter, new Quad(At(0), At(1), At(2), At(3)));
        })),
    ];

    /// <summary>Draws the photo.</summary>
    public Photo Draw()
    {
        var grooves = Grooves();
        var (onFace, onPlate, onTable) = (Scene.InverseOf(0), Scene.InverseOf(0.12), Scene.InverseOf(0.45));
        var lamp = Lamp.Normalised();
        var (sinTilt, cosTilt) = Math.SinCos(Scene.Tilt);
        var (sinTurn, cosTurn) = Math.SinCos(Scene.Turn);

        // The plane's axes and its normal toward the camera, as the scene turns and tilts them.
        var (right, down, toward) = (new Vector3D(cosTurn, sinTurn * cosTilt, sinTurn * sinTilt), new Vector3D(-sinTurn, cosTurn * cosTilt, cosTurn * sinTilt), new Vector3D(0, sinTilt, -cosTilt));
        var (alongX, alongY, up) = (lamp.Dot(right), lamp.Dot(down), lamp.Dot(toward));
        var pixels = new float[Width * Height * 3];
        Parallel.For(0, Height, row =>
        {
            for (var column = 0; column < Width; column++)
            {
                var (b, g, r) = (0.0, 0.0, 0.0);
                for (var i = 0; i < Sub * Sub; i++)
                {
                    var (px, py) = (column + (((i % Sub) + 0.5) / Sub) - 0.5, row + (((i / Sub) + 0.5) / Sub) - 0.5);
                    var light = Light(px, py);
                    (b, g, r) = (b + (light.B / (Sub * Sub)), g + (light.G / (Sub * Sub)), r + (light.R / (Sub * Sub)));
                }

                var o = ((row * Width) + column) * 3;
                (pixels[o], pixels[o + 1], pixels[o + 2]) = ((float)b, (float)g, (float)r);
            }
        });
        return Darkroom.Develop(pixels, Width, Height, BlurPixels, Noise, Seed, JpegQuality);

        (double B, double G, double R) Light(double px, double py)
        {
            var (x, y) = RingScene.ToPlane(px, py, onFace);
            var radius = Math.Sqrt((x * x) + (y * y));
            if (radius <= 1 && (Closed || radius >= Scene.Inner))
            {
                return Face(x, y, radius);
            }

            if (radius < Scene.Inner)
            {
                var (u, v) = RingScene.ToPlane(px, py, onPlate);
                var glass = PlateLight * (1 + (2 * Math.Exp(-(((u - 0.2) * (u - 0.2)) + ((v + 0.25) * (v + 0.25))) / 0.03)));
                return Math.Sqrt((u * u) + (v * v)) > 0.97 * Scene.Inner ? Times(Metal, 0.12) : (0.9 * glass, glass, 0.8 * glass);
            }

            var (tx, ty) = RingScene.ToPlane(px, py, onTable);
            if ((tx * tx) + (ty * ty) <= 1)
            {
                return Times(Metal, 0.2 + (0.1 * Math.Sin(4 * Math.Atan2(ty, tx))));
            }

            var grain = TableLight * (1 + (0.3 * Math.Sin((tx * 19) + (2 * Math.Sin(ty * 3)))) + (0.25 * (Hash(Math.Floor(tx * 90), Math.Floor(ty * 90)) - 0.5)));
            return (0.55 * grain, 0.75 * grain, grain);
        }

        (double B, double G, double R) Face(double x, double y, double radius)
        {
            var (depth, slopeX, slopeY) = grooves.At(x, y);
            var bevel = radius > 1 - Bevel ? 0.8 : !Closed && radius < Scene.Inner + Bevel ? -0.8 : 0;
            var ridge = (Turning * (Hash(Math.Floor(radius * 420), Seed) - 0.5)) + (0.02 * Math.Sin(radius * 71));
            var lean = bevel + ridge;
            var (nx, ny) = ((lean * x / radius) - (Slope * slopeX), (lean * y / radius) - (Slope * slopeY));
            var norm = Math.Sqrt(1 + (nx * nx) + (ny * ny));
            var facing = ((nx * alongX) + (ny * alongY) + up) / norm;

            // The camera looks along the plane's normal nearly enough for a broad highlight.
            var (hx, hy, hz) = (alongX, alongY, up + 1);
            var half = ((nx * hx) + (ny * hy) + hz) / (norm * Math.Sqrt((hx * hx) + (hy * hy) + (hz * hz)));
            var mottle = 1 + (0.12 * Math.Sin((x * 5.1) + Seed) * Math.Cos((y * 4.3) - Seed)) + (0.08 * (Hash(Math.Floor(x * 130), Math.Floor(y * 130)) - 0.5));
            var light = (0.18 + (0.62 * Math.Max(0, facing)) + (0.5 * Math.Pow(Math.Max(0, half), 18))) * mottle;
            // Little light falls into a groove from the side.
            light *= 1 - (0.4 * depth);
            return depth > 0.35 && Fill is { } fill ? Times((1, 1, 1), (fill * 0.6) + (0.05 * light)) : Times(Metal, light);
        }
    }

    /// <summary>The filled letters over the face, their depth from the distance to their edges.</summary>
    private GrooveMap Grooves()
    {
        var perRadius = 2 * Scene.EllipseOf(1).SemiMajor.Pixels;
        var side = (int)(2 * perRadius) + 3;
        using var mask = new Mat(side, side, MatType.CV_8UC1, Scalar.All(0));
        foreach (var letter in Texts.SelectMany(text => text.Letters(MiddleRadius)))
        {
            const double Fine = 16;
            OpenCvSharp.Point Place(PixelPoint point) => new((int)Math.Round(((point.X + 1) * perRadius + 1) * Fine), (int)Math.Round(((point.Y + 1) * perRadius + 1) * Fine));
            Cv2.FillPoly(mask, letter.Outlines.Select(outline => outline.Select(Place)), Scalar.All(255), LineTypes.Link8, 4);
        }

        using var distance = new Mat();
        Cv2.DistanceTransform(mask, distance, DistanceTypes.L2, DistanceTransformMasks.Mask5);
        using var capped = new Mat();
        var deepest = Math.Max(1, Texts.Select(text => text.XHeight).DefaultIfEmpty(0.05).Min() * perRadius * 0.09);
        Cv2.Min(distance, Scalar.All(deepest), capped);
        using var smooth = new Mat();
        Cv2.GaussianBlur(capped, smooth, new Size(0, 0), 0.8);
        smooth.GetArray(out float[] depths);
        return new GrooveMap(depths, side, perRadius, deepest);
    }

    private static (double B, double G, double R) Times((double B, double G, double R) colour, double light) => (colour.B * light, colour.G * light, colour.R * light);

    private static double Hash(double x, double y)
    {
        var v = Math.Sin((x * 12.9898) + (y * 78.233)) * 43758.5453;
        return v - Math.Floor(v);
    }

    /// <summary>Depth and slopes of the grooves over the face.</summary>
    private sealed class GrooveMap(float[] depths, int side, double perRadius, double deepest)
    {
        /// <summary>Gives depth as a share of the deepest, and the slopes of the surface.</summary>
        internal (double Depth, double X, double Y) At(double x, double y)
        {
            var (u, v) = (((x + 1) * perRadius) + 1, ((y + 1) * perRadius) + 1);
            double Depth(double du, double dv)
            {
                var (column, row) = ((int)(u + du), (int)(v + dv));
                if (column < 0 || row < 0 || column >= side - 1 || row >= side - 1)
                {
                    return 0;
                }

                var (fx, fy, at) = (u + du - column, v + dv - row, (row * side) + column);
                return ((1 - fy) * (((1 - fx) * depths[at]) + (fx * depths[at + 1]))) + (fy * (((1 - fx) * depths[at + side]) + (fx * depths[at + side + 1])));
            }

            return (Depth(0, 0) / deepest, -(Depth(1, 0) - Depth(-1, 0)) / 2, -(Depth(0, 1) - Depth(0, -1)) / 2);
        }
    }
}
