using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Relief;
using Xunit;

namespace InscriptionLab.Vision.Tests.Relief;

/// <summary>Matt bodies whose normals have closed forms, under lamps of known directions: sphere and plane, the bodies by which R. J. Woodham (Optical Engineering 19, 1980, 139-144) explains the method (the paper named from memory).</summary>
public sealed class PhotometricStereoTests
{
    private const double Albedo = 0.63;

    private const int Side = 41;

    private static readonly Vector3D[] Three = [Lamp(0, 35), Lamp(120, 40), Lamp(240, 45)];

    private static readonly Vector3D[] Eight = [.. Enumerable.Range(0, 8).Select(i => Lamp(45 * i, 30 + (5 * (i % 3))))];

    [Theory]
    [InlineData(3)]
    [InlineData(8)]
    public void A_sphere_s_normals_and_albedo_come_out_exactly_where_all_lamps_light_it(int lamps)
    {
        var (directions, looked) = (lamps == 3 ? Three : Eight, 0);
        foreach (var normal in Sphere())
        {
            var levels = directions.Select(lamp => Albedo * normal.Dot(lamp)).ToArray();
            if (levels.Min() > 0.1)
            {
                var found = PhotometricStereo.Solve(levels, directions)!.Value;
                Assert.True((found.Normal - normal).Norm < 1e-9, $"{found.Normal} for {normal}");
                Assert.Equal(Albedo, found.Albedo, 9);
                looked++;
            }
        }

        Assert.True(looked > 100, $"only {looked} pixels are lit by all lamps");
    }

    [Fact]
    public void A_plane_s_normal_comes_out_exactly_from_whichever_three_lamps_light_it()
    {
        var normal = new Vector3D(0.3, -0.2, 0.9).Normalised();
        for (var left = 0; left < Eight.Length; left++)
        {
            Vector3D[] lamps = [Eight[left], Eight[(left + 3) % 8], Eight[(left + 5) % 8]];
            var found = PhotometricStereo.Solve([.. lamps.Select(lamp => Albedo * normal.Dot(lamp))], lamps)!.Value;
            Assert.True((found.Normal - normal).Norm < 1e-9);
        }
    }

    [Fact]
    public void Attached_shadows_do_not_bend_the_normals_of_a_sphere()
    {
        var errors = Sphere().Select(normal => Error(normal, [.. Eight.Select(lamp => Math.Max(0, Albedo * normal.Dot(lamp)))])).OfType<double>().ToList();
        Assert.True(errors.Count > 900, $"only {errors.Count} pixels are solved");
        Assert.True(errors.Max() < 1e-3, $"largest error {errors.Max()} degrees");
    }

    [Fact]
    public void Noise_highlights_and_shadows_leave_the_median_error_below_three_degrees()
    {
        var random = new Random(11);
        double Gauss() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var (robust, plain) = (new List<double>(), new List<double>());
        foreach (var normal in Sphere())
        {
            var levels = Eight.Select(lamp =>
            {
                var half = (lamp + new Vector3D(0, 0, 1)).Normalised();
                var shine = 0.6 * Math.Pow(Math.Max(0, normal.Dot(half)), 60);
                var cast = random.NextDouble() < 0.05 ? 0.02 : 1;
                return Math.Clamp((cast * Math.Max(0, (Albedo * normal.Dot(lamp)) + shine)) + (0.01 * Gauss()), 0, 1);
            }).ToArray();
            if (Error(normal, levels) is { } error)
            {
                robust.Add(error);
                plain.Add(Plain(normal, levels));
            }
        }

        Assert.True(Median(robust) < 3, $"median {Median(robust)} degrees");
        Assert.True(Median(robust) < Median(plain) / 2, $"plain least squares {Median(plain)}, by weights {Median(robust)} degrees");
    }

    [Fact]
    public void Lamps_in_one_plane_tell_no_normal()
    {
        Vector3D[] flat = [Lamp(0, 30), Lamp(0, 60), Lamp(180, 50)];
        Assert.Null(PhotometricStereo.Solve([0.3, 0.5, 0.4], flat));
        Assert.Null(PhotometricStereo.Solve([0.3, -1, 0.4], Three));
    }

    private static Vector3D Lamp(double side, double height)
    {
        var (sinSide, cosSide) = Math.SinCos(side * Math.PI / 180);
        var (sinHeight, cosHeight) = Math.SinCos(height * Math.PI / 180);
        return new Vector3D(cosSide * cosHeight, sinSide * cosHeight, sinHeight);
    }

    /// <summary>Normals of a sphere seen from above: at (x, y) in radii from the middle (x, y, root of 1 - x2 - y2).</summary>
    private static IEnumerable<Vector3D> Sphere() =>
        from row in Enumerable.Range(0, Side)
        from column in Enumerable.Range(0, Side)
        let x = ((2.0 * column) / (Side - 1)) - 1
        let y = ((2.0 * row) / (Side - 1)) - 1
        where (x * x) + (y * y) < 0.8
        select new Vector3D(x, y, Math.Sqrt(1 - (x * x) - (y * y)));

    private static double? Error(Vector3D normal, double[] levels) => PhotometricStereo.Solve(levels, Eight) is { } found ? Degrees(found.Normal, normal) : null;

    /// <summary>Plain least squares over all eight lamps, whose sums of squares are worked out by Gauss' elimination: what robust weights must beat.</summary>
    private static double Plain(Vector3D normal, double[] levels)
    {
        var rows = new double[3][];
        double Part(Vector3D vector, int i) => i == 0 ? vector.X : i == 1 ? vector.Y : vector.Z;
        for (var i = 0; i < 3; i++)
        {
            rows[i] = [.. Enumerable.Range(0, 3).Select(j => Eight.Sum(lamp => Part(lamp, i) * Part(lamp, j))), Eight.Zip(levels, (lamp, level) => Part(lamp, i) * level).Sum()];
        }

        for (var pivot = 0; pivot < 3; pivot++)
        {
            for (var i = 0; i < 3; i++)
            {
                if (i != pivot)
                {
                    var factor = rows[i][pivot] / rows[pivot][pivot];
                    rows[i] = [.. rows[i].Zip(rows[pivot], (one, other) => one - (factor * other))];
                }
            }
        }

        return Degrees(new Vector3D(rows[0][3] / rows[0][0], rows[1][3] / rows[1][1], rows[2][3] / rows[2][2]).Normalised(), normal);
    }

    private static double Degrees(Vector3D one, Vector3D other) => Math.Acos(Math.Clamp(one.Dot(other), -1, 1)) * 180 / Math.PI;

    private static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);
}
