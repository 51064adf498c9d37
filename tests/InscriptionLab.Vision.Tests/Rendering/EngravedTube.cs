using System;
using System.Collections.Generic;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Photos;

namespace InscriptionLab.Vision.Tests.Rendering;

/// <summary>A tube with grooves of exact normals under one lamp: matt metal with a broad highlight, levels coded as sRGB, a few rays a pixel, seeded noise.</summary>
internal sealed record EngravedTube(TubeScene Scene, IReadOnlyList<Groove> Grooves)
{
    private const int RaysPerSide = 2;

    public double Ambient { get; init; } = 0.06;

    public double Matt { get; init; } = 0.5;

    public double Shine { get; init; } = 0.15;

    public double ShineExponent { get; init; } = 25;

    /// <summary>Gets lettering cut beside the grooves: from a place in millimetres along axis and arc to its slopes along both and to how bright the metal is; null for none.</summary>
    public Func<double, double, (double Axial, double Arc, double Stain)>? Lettering { get; init; }

    /// <summary>Gets the angle by which the lettering's base line runs off the axis, radians: a screw line round the tube.</summary>
    public double LetteringTurn { get; init; }

    /// <summary>Gets how strongly the base line is bowed: arc over squared place along the line, per millimetre.</summary>
    public double LetteringBow { get; init; }

    /// <summary>Gets what the levels are multiplied with before they are coded.</summary>
    public double Exposure { get; init; } = 1;

    /// <summary>The unit vector from the tube to a lamp: angle round the tube from the camera's side (positive toward the lower outline), and toward the right end of the axis.</summary>
    public static Vector3D Lamp(double aroundDegrees, double alongDegrees)
    {
        var (sinAlong, cosAlong) = Math.SinCos(alongDegrees * Math.PI / 180);
        var (sinAround, cosAround) = Math.SinCos(aroundDegrees * Math.PI / 180);
        return new Vector3D(sinAlong, -sinAround * cosAlong, cosAround * cosAlong);
    }

    /// <summary>The exact normal at a surface point, in the world's frame.</summary>
    public Vector3D NormalAt(double axial, double around)
    {
        var (onAxis, onArc) = (0.0, 0.0);
        var lowest = 0.0;
        foreach (var groove in Grooves)
        {
            var (height, alongAxis, alongArc) = groove.At(axial, around * Scene.Radius);
            if (height < lowest)
            {
                (lowest, onAxis, onArc) = (height, alongAxis, alongArc);
            }
        }

        if (Lettering is { } cut)
        {
            var (along, below) = OnLine(axial, around * Scene.Radius);
            var (alongSlope, belowSlope, _) = cut(along, below);
            var ofLine = alongSlope - (2 * LetteringBow * along * belowSlope);
            var (sine, cosine) = Math.SinCos(LetteringTurn);
            (onAxis, onArc) = (onAxis + (ofLine * cosine) - (belowSlope * sine), onArc + (ofLine * sine) + (belowSlope * cosine));
        }

        var (sin, cos) = Math.SinCos(around);
        var outward = new Vector3D(0, -sin, cos);
        var onward = new Vector3D(0, -cos, -sin);
        return (outward - new Vector3D(onAxis, 0, 0) - (onward * onArc)).Normalised();
    }

    public Photo Render(Vector3D lamp)
    {
        var (width, height) = (Scene.Width, Scene.Height);
        var gray = new byte[width * height];
        var colour = new byte[gray.Length * ColourImage.Channels];
        var random = new Random(Scene.Seed);
        var (centre, right, down, forward) = Scene.Camera();
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                double light = 0;
                for (var i = 0; i < RaysPerSide * RaysPerSide; i++)
                {
                    var px = x + (((i % RaysPerSide) + 0.5) / RaysPerSide) - 0.5 - Scene.PrincipalPoint.X;
                    var py = y + (((i / RaysPerSide) + 0.5) / RaysPerSide) - 0.5 - Scene.PrincipalPoint.Y;
                    light += Light(centre, ((right * px) + (down * py) + (forward * Scene.Focal)).Normalised(), lamp);
                }

                var noise = Scene.Noise * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
                var level = (byte)Math.Clamp(Math.Round((255 * Coded(Exposure * light / (RaysPerSide * RaysPerSide))) + noise), 0, 255);
                var at = (y * width) + x;
                (gray[at], colour[3 * at], colour[(3 * at) + 1], colour[(3 * at) + 2]) = (level, level, level, level);
            }
        }

        return new Photo("engraved.png", new string('0', 64), new ColourImage(width, height, colour), new GrayImage(width, height, gray), new LensFacts(PixelLength.FromPixels(Scene.Focal), 1), new PhotoQuality(100, 0, 0));
    }

    private double Light(Vector3D centre, Vector3D ray, Vector3D lamp)
    {
        var a = (ray.Y * ray.Y) + (ray.Z * ray.Z);
        var b = (centre.Y * ray.Y) + (centre.Z * ray.Z);
        var c = (centre.Y * centre.Y) + (centre.Z * centre.Z) - (Scene.Radius * Scene.Radius);
        var discriminant = (b * b) - (a * c);
        if (discriminant < 0)
        {
            return 0.05;
        }

        var point = centre + (ray * ((-b - Math.Sqrt(discriminant)) / a));
        var around = Math.Atan2(-point.Y, point.Z);
        var normal = NormalAt(point.X, around);
        var (along, below) = OnLine(point.X, around * Scene.Radius);
        var stain = Lettering?.Invoke(along, below).Stain ?? 1;
        var facing = normal.Dot(lamp);
        var half = (lamp - ray).Normalised();
        return stain * (Ambient + (facing > 0 ? (Matt * facing) + (Shine * Math.Pow(Math.Max(0, normal.Dot(half)), ShineExponent)) : 0));
    }

    /// <summary>Leads from a place on the tube, in millimetres along axis and arc, to the place beside the lettering's base line.</summary>
    private (double Along, double Below) OnLine(double axial, double arc)
    {
        var (sin, cos) = Math.SinCos(LetteringTurn);
        var along = (axial * cos) + (arc * sin);
        return (along, (arc * cos) - (axial * sin) - (LetteringBow * along * along));
    }

    /// <summary>IEC 61966-2-1.</summary>
    private static double Coded(double light) => light <= 0.0031308 ? 12.92 * light : (1.055 * Math.Pow(Math.Min(1, light), 1 / 2.4)) - 0.055;
}
