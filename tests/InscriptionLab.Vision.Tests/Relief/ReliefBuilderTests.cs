using System;
using System.Collections.Concurrent;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Reliefs;
using InscriptionLab.Vision.Relief;
using InscriptionLab.Vision.Tests.Rendering;
using InscriptionLab.Vision.Tests.Strips;
using Xunit;

namespace InscriptionLab.Vision.Tests.Relief;

/// <summary>Rendered grooves of exact normals under several lamps: with noise, a broad highlight, light from everywhere, and a different exposure in each photo.</summary>
public sealed class ReliefBuilderTests(ITestOutputHelper output)
{
    private const double LargestMedian = 10;

    /// <summary>How far off a lamp may be told, degrees: normals bear it.</summary>
    private const double LampOff = 20;

    /// <summary>Slope from which a pixel lies in a groove: bare metal would be right by making.</summary>
    private const double InGroove = 0.15;

    private static readonly TubeScene Scene = new() { Width = 420, Height = 230, Focal = 1900, Noise = 1.5, Radius = 16, Distance = 220 };

    private static readonly EngravedTube Tube = new(Scene, [.. Groove.Word("HELITE", 0, -2.5, 4, 0.35, 0.12), .. Groove.Word("NAZHF", 1, 3.5, 4, 0.35, 0.12)]);

    private static readonly ConcurrentDictionary<(double Around, double Along, int Seed), Photo> Rendered = new();

    private static readonly (double Around, double Along)[] Four = [(10, 60), (-5, -62), (-65, 5), (50, 35)];

    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(8)]
    public void Normals_in_grooves_are_within_ten_degrees_where_the_lamps_are_known(int lamps)
    {
        var stands = lamps == 8 ? [.. Four, (-40, -40), (60, -20), (-20, 50), (30, -50)] : Four.Take(lamps).ToArray();
        var relief = Found(stands, given: true);
        Assert.Equal(ReliefKind.Normals, relief.Kind);
        var (median, bare, pixels) = Errors(relief);
        output.WriteLine(FormattableString.Invariant($"{lamps} lamps: median {median:0.0} degrees over {pixels} pixels; the bare cylinder {bare:0.0}"));
        Assert.True(pixels > 2000, $"only {pixels} pixels lie in grooves");
        Assert.True(median < LargestMedian, $"median {median} degrees over {pixels} pixels; the bare cylinder would have {bare}");
        Assert.True(median < bare / 2, $"median {median}, bare cylinder {bare}");
    }

    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    public void Normals_in_grooves_are_within_ten_degrees_where_the_shading_tells_of_the_lamps(int lamps)
    {
        var relief = Found(Four.Take(lamps).ToArray(), given: false);
        for (var i = 0; i < lamps; i++)
        {
            var (truth, found) = (new Lamp(Angle.FromDegrees(Four[i].Around), Angle.FromDegrees(Four[i].Along)).At(default), relief.Lamps[i].At(default));
            var off = Math.Acos(Math.Clamp(truth.Dot(found), -1, 1)) * 180 / Math.PI;
            Assert.True(off < LampOff, $"lamp {i}: {off} degrees off, {relief.Lamps[i].Around.Degrees} {relief.Lamps[i].Along.Degrees}");
        }

        var (median, bare, pixels) = Errors(relief);
        output.WriteLine(FormattableString.Invariant($"{lamps} lamps: median {median:0.0} degrees over {pixels} pixels; the bare cylinder {bare:0.0}"));
        Assert.True(median < LargestMedian, $"median {median} degrees over {pixels} pixels; the bare cylinder would have {bare}");
    }

    [Fact]
    public void Grooves_lie_below_the_metal_round_them()
    {
        var relief = Found(Four, given: false);
        var (below, all) = (0, 0);
        var heights = relief.Height.Values.ToArray().Order().ToList();
        var middle = heights[heights.Count / 2];
        foreach (var (x, y, height) in Truth(relief).Where(place => place.Height < -0.06))
        {
            all++;
            below += relief.Height[x, y] < middle ? 1 : 0;
        }

        Assert.True(all > 500 && below > 0.9 * all, $"{below} of {all}");
    }

    [Fact]
    public void Two_lamps_tell_slopes_in_the_direction_in_which_they_differ()
    {
        var relief = Found([Four[0], Four[1]], given: true);
        Assert.Equal(ReliefKind.OneDirection, relief.Kind);
        var (off, pixels) = (new List<double>(), 0);
        foreach (var (x, y, normal) in Normals(relief).Where(place => Math.Abs(place.Normal.X / place.Normal.Z) > InGroove && Math.Abs(place.Normal.Y / place.Normal.Z) < 0.05))
        {
            pixels++;
            off.Add(Math.Abs(Math.Asin(relief.NormalX[x, y]) - Math.Asin(normal.X)) * 180 / Math.PI);
        }

        Assert.True(pixels > 500, $"only {pixels} pixels");
        Assert.True(off.Order().ElementAt(off.Count / 2) < LargestMedian, $"median {off.Order().ElementAt(off.Count / 2)} degrees");
    }

    [Fact]
    public void Two_lamps_from_either_end_are_told_apart_by_what_is_cut_into_the_metal()
    {
        var relief = Found([Four[1], Four[0]], given: false);
        Assert.Equal(ReliefKind.OneDirection, relief.Kind);
        Assert.True(relief.Lamps[0].Along.Degrees < -40 && relief.Lamps[1].Along.Degrees > 40, string.Join(", ", relief.Lamps));
    }

    [Fact]
    public void One_lamp_taken_twice_is_refused_with_a_remedy()
    {
        var photos = Photos([Four[0], Four[0]]);
        var refused = Assert.IsType<Outcome<SurfaceRelief>.Declined>(new ReliefBuilder().Run(photos, UnrollerTests.TubeOf(Scene), null, null, CancellationToken.None)).Refusal;
        Assert.Contains("same place", refused.Sentence, StringComparison.Ordinal);
        Assert.Contains("Move the lamp", refused.Remedy, StringComparison.Ordinal);
    }

    private static List<Photo> Photos((double Around, double Along)[] stands) => [.. stands.Select((stand, i) => Rendered.GetOrAdd((stand.Around, stand.Along, i), _ =>
        (Tube with { Scene = Scene with { Seed = i + 1 }, Exposure = 0.9 + (0.15 * (i % 3)) }).Render(EngravedTube.Lamp(stand.Around, stand.Along))))];

    private static SurfaceRelief Found((double Around, double Along)[] stands, bool given)
    {
        Lamp[]? lamps = given ? [.. stands.Select(stand => new Lamp(Angle.FromDegrees(stand.Around), Angle.FromDegrees(stand.Along)))] : null;
        return Assert.IsType<Outcome<SurfaceRelief>.Found>(new ReliefBuilder().Run(Photos(stands), UnrollerTests.TubeOf(Scene), null, lamps, CancellationToken.None)).Value;
    }

    private static (double Median, double Bare, int Pixels) Errors(SurfaceRelief relief)
    {
        var (errors, bare) = (new List<double>(), new List<double>());
        foreach (var (x, y, normal) in Normals(relief).Where(place => Math.Sqrt(1 - (place.Normal.Z * place.Normal.Z)) / place.Normal.Z > InGroove))
        {
            var (nx, ny) = (relief.NormalX[x, y], relief.NormalY[x, y]);
            var cosine = (nx * normal.X) + (ny * normal.Y) + (Math.Sqrt(Math.Max(0, 1 - (nx * nx) - (ny * ny))) * normal.Z);
            errors.Add(Math.Acos(Math.Clamp(cosine, -1, 1)) * 180 / Math.PI);
            bare.Add(Math.Acos(normal.Z) * 180 / Math.PI);
        }

        return (errors.Order().ElementAt(errors.Count / 2), bare.Order().ElementAt(bare.Count / 2), errors.Count);
    }

    private static IEnumerable<(int X, int Y, Vector3D Normal)> Normals(SurfaceRelief relief) => Places(relief).Select(place =>
    {
        var (sin, cos) = Math.SinCos(place.Around);
        var normal = Tube.NormalAt(place.Axial, place.Around);
        return (place.X, place.Y, new Vector3D(normal.X, -(normal.Y * cos) - (normal.Z * sin), (normal.Z * cos) - (normal.Y * sin)));
    });

    private static IEnumerable<(int X, int Y, double Height)> Truth(SurfaceRelief relief) =>
        Places(relief).Select(place => (place.X, place.Y, Tube.Grooves.Min(groove => groove.At(place.Axial, place.Around * Scene.Radius).Height)));

    /// <summary>Places of the scene that the strip's pixels show, through the photo: both ways are exact.</summary>
    private static IEnumerable<(int X, int Y, double Axial, double Around)> Places(SurfaceRelief relief)
    {
        for (var y = 10; y < relief.Height.Height - 10; y++)
        {
            var around = relief.Map.ToSurface(new PixelPoint(0, y)).Around.Radians;
            for (var x = 10; x < relief.Height.Width - 10 && Math.Abs(around) < 0.5; x++)
            {
                yield return (x, y, relief.Map.ToSurface(new PixelPoint(x, y)).Axial * Scene.Radius, around);
            }
        }
    }
}
