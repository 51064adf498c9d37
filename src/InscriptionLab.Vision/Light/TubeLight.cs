using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Strips;

namespace InscriptionLab.Vision.Light;

/// <summary>
/// The angle round a tube's axis at which a lamp stands, from the line along which bare metal is brightest. There the metal's normal halves the angle between lamp and camera
/// (the law of reflection, in the plane square to the axis, where a tube's normals lie). Along the axis a tube has no slope and tells nothing.
/// </summary>
internal sealed class TubeLight
{
    /// <summary>Degrees to either side that are looked at; nearer to the outlines metal mirrors what it lies on.</summary>
    private const int Reach = 65;

    /// <summary>Degrees to either side over which the light is averaged.</summary>
    private const int Calm = 3;

    /// <summary>Pixels of the picture for a degree in the middle of the tube: one a row, and a little over.</summary>
    private const double PixelsADegree = 1.1;

    /// <summary>Degrees within which two bright lines count as one.</summary>
    private const int Apart = 15;

    /// <summary>Share of a row that must lie in the picture.</summary>
    private const double LeastSeen = 0.5;

    private const double Degree = Math.PI / 180;

    private TubeLight(Angle around, double rival) => (Around, Rival) = (around, rival);

    /// <summary>Gets the angle round the axis from the generatrix that faces the camera to the lamp.</summary>
    internal Angle Around { get; }

    /// <summary>Gets how bright the second line is beside the first, both over the darkest row: near 1 the metal mirrors more than one thing.</summary>
    internal double Rival { get; }

    /// <summary>Looks at a length of the tube; null where too little of its width lies in the picture.</summary>
    /// <param name="photo">The photo: a few pixels a degree are enough.</param>
    /// <param name="tube">The tube.</param>
    /// <param name="from">Where the length begins, in radii.</param>
    /// <param name="to">Where it ends.</param>
    internal static TubeLight? Of(ReducedPhoto photo, Tube tube, double from, double to)
    {
        var map = new CylinderStripMap(tube.Pose, 1 / Degree, from, Angle.FromDegrees(-Reach));
        var levels = Levels(photo.By(PixelsADegree / (Degree * tube.Diameter.Pixels / 2 * photo.Scale)), map, Math.Max(1, (int)((to - from) / Degree)));
        var rows = Enumerable.Range(0, levels.Length).Where(row => double.IsFinite(levels[row])).ToList();
        if (rows.Count < Reach)
        {
            return null;
        }

        var calm = rows.ToDictionary(row => row, row => rows.Where(other => Math.Abs(other - row) <= Calm).Average(other => levels[other]));
        var (brightest, darkest) = (rows.MaxBy(row => calm[row]), rows.Min(row => calm[row]));
        var second = rows.Where(row => Math.Abs(row - brightest) > Apart && IsCrest(calm, row)).Select(row => calm[row]).DefaultIfEmpty(darkest).Max();
        var normal = (brightest - Reach) * Degree;
        var camera = Math.Atan2(-Math.Sin(normal), new CylinderProjection(tube.Pose).Distance - Math.Cos(normal));
        return new TubeLight(Angle.FromRadians((2 * normal) - camera), (second - darkest) / Math.Max(1e-6, calm[brightest] - darkest));
    }

    /// <summary>The middle of the light along each degree round the tube; not a number outside the picture.</summary>
    private static double[] Levels(ReducedPhoto photo, CylinderStripMap strips, int width)
    {
        var (map, picture) = (photo.To(strips), photo.Picture);
        var strip = PhotoSampler.Sample(picture, map, width, (2 * Reach) + 1);
        bool Shown(int column, int row)
        {
            var point = map.ToPhoto(new PixelPoint(column, row));
            return point.X >= 0 && point.Y >= 0 && point.X <= picture.Width - 1 && point.Y <= picture.Height - 1;
        }

        return [.. Enumerable.Range(0, strip.Height).Select(row =>
        {
            var seen = Enumerable.Range(0, width).Where(column => Shown(column, row)).Select(column => (double)SrgbLight.Of(strip[column, row])).Order().ToList();
            return seen.Count < LeastSeen * width ? double.NaN : seen[seen.Count / 2];
        })];
    }

    private static bool IsCrest(Dictionary<int, double> calm, int row) =>
        Enumerable.Range(row - Calm, (2 * Calm) + 1).All(other => !calm.TryGetValue(other, out var level) || level <= calm[row]);
}
