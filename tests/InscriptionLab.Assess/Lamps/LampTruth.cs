using System;
using System.Linq;
using InscriptionLab.Assess.Truths;
using InscriptionLab.Measures;

namespace InscriptionLab.Assess.Lamps;

/// <summary>Where the nearest lamp of a rendered photo stands over the surface at the lettering, from the truth's own camera and lamp.</summary>
/// <param name="InPhoto">Direction to the lamp over the surface, as the photo shows it: from the X axis toward the Y axis.</param>
/// <param name="Height">Height of the lamp over the surface there; below zero it does not light the lettering.</param>
internal sealed record LampTruth(Angle InPhoto, Angle Height)
{
    /// <summary>How far along the surface toward the lamp the direction is looked at, millimetres.</summary>
    private const double Step = 0.5;

    /// <summary>Gives the lamp; null where the photo has no lamp, no tube or no letters in sight.</summary>
    internal static LampTruth? Of(TruthPhoto truth)
    {
        var letters = truth.Letters.Where(letter => letter.Visible && letter.Quad.Length == 4).ToList();
        if (truth is not { Light.Lamps: [var lamp, ..], Camera: { } camera, TubeDiameterMillimetres: { } diameter } || letters.Count == 0)
        {
            return null;
        }

        var radius = diameter / 2;
        var (right, down, forward) = (Vector(camera.Rotation[0]), Vector(camera.Rotation[1]), Vector(camera.Rotation[2]));

        // The axis is the X axis here: the truth has it at the tube's radius above the table.
        var lift = new Vector3D(0, 0, -radius);
        var centre = Vector(camera.Position) + lift;
        var x = (letters.Average(letter => letter.Quad.Average(corner => corner[0])) - camera.PrincipalPoint[0]) / camera.Focal;
        var y = (letters.Average(letter => letter.Quad.Average(corner => corner[1])) - camera.PrincipalPoint[1]) / camera.Focal;
        var ray = (right * x) + (down * y) + forward;
        var (a, b, c) = ((ray.Y * ray.Y) + (ray.Z * ray.Z), (centre.Y * ray.Y) + (centre.Z * ray.Z), (centre.Y * centre.Y) + (centre.Z * centre.Z) - (radius * radius));
        if ((b * b) - (a * c) < 0)
        {
            return null;
        }

        var place = centre + (ray * ((-b - Math.Sqrt((b * b) - (a * c))) / a));
        var outward = new Vector3D(0, place.Y, place.Z).Normalised();
        var toLamp = (Vector(lamp.Position) + lift - place).Normalised();
        var over = toLamp - (outward * toLamp.Dot(outward));
        if (!(over.Norm > 0))
        {
            return null;
        }

        (double X, double Y) Shown(Vector3D point)
        {
            var from = point - centre;
            return (from.Dot(right) / from.Dot(forward), from.Dot(down) / from.Dot(forward));
        }

        var (here, there) = (Shown(place), Shown(place + (over.Normalised() * Step)));
        return new LampTruth(Angle.FromRadians(Math.Atan2(there.Y - here.Y, there.X - here.X)), Angle.FromRadians(Math.Asin(toLamp.Dot(outward))));
    }

    private static Vector3D Vector(System.Collections.Immutable.ImmutableArray<double> numbers) => new(numbers[0], numbers[1], numbers[2]);
}
