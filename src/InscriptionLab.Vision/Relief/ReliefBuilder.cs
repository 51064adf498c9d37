using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Reliefs;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Strips;

namespace InscriptionLab.Vision.Relief;

/// <summary>Photos of one tube from one place under several lamps to the form of its surface.</summary>
public sealed class ReliefBuilder
{
    private const string Stage = "relief";

    private readonly ReliefOptions _options;
    private readonly Unroller _unroller;

    /// <summary>Makes the stage.</summary>
    /// <param name="options">How to work the form out; null for the defaults.</param>
    /// <param name="unroller">Lays the photos flat; null for the defaults.</param>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of range.</exception>
    public ReliefBuilder(ReliefOptions? options = null, Unroller? unroller = null)
    {
        _options = options ?? new ReliefOptions();
        _unroller = unroller ?? new Unroller();
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.GroundAlong, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.GroundAround, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.LongestWave, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.LeastLit, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(_options.LeastDifference, nameof(options));
    }

    /// <summary>Works the form out.</summary>
    /// <param name="photos">Two photos or more, of one size, taken from one place.</param>
    /// <param name="tube">The tube, in all of them.</param>
    /// <param name="lettering">A photo point in the middle of the lettering; null for the middle of the tube.</param>
    /// <param name="given">Where the lamps stood, one a photo; null to find out.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>The form, or why it cannot be told.</returns>
    /// <exception cref="ArgumentException">There are fewer than two photos, or not as many lamps as photos.</exception>
    public Outcome<SurfaceRelief> Run(IReadOnlyList<Photo> photos, Tube tube, PixelPoint? lettering, IReadOnlyList<Lamp>? given, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(photos);
        ArgumentNullException.ThrowIfNull(tube);
        if (photos.Count < 2 || (given is not null && given.Count != photos.Count))
        {
            throw new ArgumentException("A relief needs two photos or more, and a lamp for each where lamps are given.", nameof(photos));
        }

        if (photos.Any(photo => (photo.Gray.Width, photo.Gray.Height) != (photos[0].Gray.Width, photos[0].Gray.Height)))
        {
            return Refuse("The photos differ in size, so they do not show one view.", "Take all photos of a set with one camera from one place, and do not crop them.");
        }

        var flat = new List<FlatLight>();
        CylinderStripMap? map = null;
        foreach (var photo in photos)
        {
            cancel.ThrowIfCancellationRequested();
            var strip = _unroller.Run(photo, tube);
            map = (CylinderStripMap)strip.Map;
            flat.Add(FlatLight.Of(strip, _options));
        }

        return Solve(flat, map!, lettering, given, cancel);
    }

    private Outcome<SurfaceRelief> Solve(List<FlatLight> flat, CylinderStripMap map, PixelPoint? lettering, IReadOnlyList<Lamp>? given, CancellationToken cancel)
    {
        var focus = lettering is { } at && map.ToStrip(at) is { } place ? map.ToSurface(place).Around : default;
        ImmutableArray<Lamp> lamps = given is null ? new LampEstimator(_options).Find(flat, map, focus) : [.. given];
        var spread = LampSpread.Of(lamps, focus, _options.LeastLit);
        if (spread.Most < _options.LeastDifference)
        {
            return Refuse("The lamps seem to have stood in nearly the same place, so the form of the surface cannot be told from these photos.", "Move the lamp between the photos: one from the left, one from the right, one from above.");
        }

        var full = flat.Count >= 3 && spread.Least >= _options.LeastSpread * spread.Most && spread.Least >= _options.LeastDifference;
        var solver = new SlopeSolver(_options);
        var slopes = full ? solver.Normals(flat, map, lamps, cancel) : solver.OneDirection(flat, map, lamps, spread, cancel);
        if (!full && given is null && flat.Count >= 3 && solver.Explained(flat, map, lamps, spread, slopes, focus) < _options.LeastExplained)
        {
            return Refuse("The shading of the tube does not tell where the lamps stood: what it reflects hides it.", "Say where the lamp of each photo stood (--lamp), or cover what the metal reflects with dull dark cloth.");
        }

        slopes = slopes.AgainstGround(flat[0].Width, flat[0].Height, _options.GroundAround * 2 * map.PixelsPerRadius);
        var wave = _options.LongestWave * 2 * map.PixelsPerRadius;
        FloatImage Picture(float[] values) => new(flat[0].Width, flat[0].Height, values);
        var height = full
            ? SlopeIntegrator.Integrate(Picture(slopes.AlongAxis), Picture(slopes.AlongArc), wave)
            : SlopeIntegrator.Integrate(Picture([.. slopes.AlongAxis.Zip(slopes.AlongArc, (x, y) => (float)((x * spread.X) + (y * spread.Y)))]), spread.X, spread.Y, wave);
        var (normalX, normalY) = Normals(slopes);
        return new Outcome<SurfaceRelief>.Found(new SurfaceRelief(map, full ? ReliefKind.Normals : ReliefKind.OneDirection, Picture(normalX), Picture(normalY), Picture(OverMiddle(slopes.Albedo)), height, lamps, given is not null));
    }

    private static (float[] X, float[] Y) Normals(SurfaceSlopes slopes)
    {
        var (x, y) = (new float[slopes.AlongAxis.Length], new float[slopes.AlongAxis.Length]);
        for (var at = 0; at < x.Length; at++)
        {
            var (p, q) = (slopes.AlongAxis[at], slopes.AlongArc[at]);
            var norm = MathF.Sqrt(1 + (p * p) + (q * q));
            (x[at], y[at]) = (-p / norm, -q / norm);
        }

        return (x, y);
    }

    private static float[] OverMiddle(float[] albedo)
    {
        var sorted = albedo.ToArray();
        Array.Sort(sorted);
        var middle = Math.Max(1e-6f, sorted[sorted.Length / 2]);
        return Array.ConvertAll(albedo, value => value / middle);
    }

    private static Outcome<SurfaceRelief> Refuse(string sentence, string remedy) => new Outcome<SurfaceRelief>.Declined(new Refusal(Stage, sentence, remedy));
}
