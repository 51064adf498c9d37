using System;
using CsCheck;
using InscriptionLab.Measures;
using InscriptionLab.Optics;
using Xunit;

namespace InscriptionLab.Core.Tests.Optics;

public sealed class LensTests
{
    private const double FlatFirst = -1;
    private const double Equiconvex = 0;

    /// <summary>Worked by similar triangles: 40 mm objective, 20 mm stop 60 mm behind it, focus 600 mm: 22.222 mm of beam, 0.30864 of the light, 1.696 stops; the plain ratio 20/40 would give a quarter.</summary>
    [Fact]
    public void A_stop_behind_the_objective_lets_in_a_wider_beam_than_its_own_width()
    {
        var seen = ApertureStop.SeenThroughObjective(Mm(20), Mm(600), Mm(60));
        Assert.Equal(22.2222, seen.Millimetres, 4);
        var share = ApertureStop.LightShare(Mm(40), seen);
        Assert.Equal(0.30864, share, 5);
        Assert.Equal(1.696, ApertureStop.StopsLost(share), 3);
        Assert.Equal(20, ApertureStop.BehindObjective(seen, Mm(600), Mm(60)).Millimetres, 9);
    }

    [Fact]
    public void A_stop_wider_than_the_glass_takes_nothing()
    {
        Assert.Equal(1, ApertureStop.LightShare(Mm(30), Mm(32)));
        Assert.Equal(Mm(30), ApertureStop.EntrancePupil(Mm(30), Mm(32)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ApertureStop.SeenThroughObjective(Mm(20), Mm(600), Mm(600)));
    }

    /// <summary>F. A. Jenkins, H. E. White, Fundamentals of Optics: 1.17 (convex first), 4.5 (flat first), 1.67 (equiconvex), 1.07 (best, q = 0.714) h²/f for index 1.5.</summary>
    [Theory]
    [InlineData(1.5, ThinLens.ConvexFirst, 7.0 / 6)]
    [InlineData(1.5, FlatFirst, 4.5)]
    [InlineData(1.5, Equiconvex, 5.0 / 3)]
    [InlineData(1.5, 5.0 / 7, 1.0714)]
    [InlineData(1.5168, ThinLens.ConvexFirst, 1.0964)]
    [InlineData(1.5168, FlatFirst, 4.3071)]
    public void Spherical_aberration_of_single_lenses_is_as_in_the_handbook(double index, double shape, double factor) =>
        Assert.Equal(factor, ThinLens.SphericalFactor(index, shape), 4);

    /// <summary>Least aberration at q = 2 (n² - 1) / (n + 2) (the same book).</summary>
    [Fact]
    public void No_shape_has_less_aberration_than_the_best() =>
        Gen.Select(Gen.Double[1.4, 1.9], Gen.Double[-3, 3]).Sample((n, q) =>
            ThinLens.SphericalFactor(n, q) >= ThinLens.SphericalFactor(n, 2 * ((n * n) - 1) / (n + 2)) - 1e-12);

    /// <summary>Exact rays worked independently: index 1.5, radius 50 mm, 6 mm thick, curved side first: back focus 96.000 mm, aberration 0.28971, 1.16899, 2.67017 mm at 5, 10, 15 mm; flat side first 100.000 mm, 1.12997, 4.58202, 10.56376 mm.</summary>
    [Theory]
    [InlineData(true, 96, 0.28971, 1.16899, 2.67017)]
    [InlineData(false, 100, 1.12997, 4.58202, 10.56376)]
    public void Exact_rays_agree_with_an_independent_trace(bool curvedFirst, double focus, double at5, double at10, double at15)
    {
        var lens = curvedFirst ? new SingletTrace(1.5, 50, double.PositiveInfinity, 6) : new SingletTrace(1.5, double.PositiveInfinity, -50, 6);
        Assert.Equal(focus, lens.FocusBehindLens(Mm(1e-4)).Millimetres, 3);
        Assert.Equal(at5, lens.Longitudinal(Mm(5)).Millimetres, 4);
        Assert.Equal(at10, lens.Longitudinal(Mm(10)).Millimetres, 4);
        Assert.Equal(at15, lens.Longitudinal(Mm(15)).Millimetres, 4);
    }

    /// <summary>Third order is what exact rays come to near the axis: within 1 % at a tenth of the radius, for a lens of 6 mm in place of a thin one.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_third_order_is_that_of_exact_rays(bool curvedFirst)
    {
        var lens = curvedFirst ? new SingletTrace(1.5, 50, double.PositiveInfinity, 6) : new SingletTrace(1.5, double.PositiveInfinity, -50, 6);
        var thin = ThinLens.Longitudinal(1.5, curvedFirst ? ThinLens.ConvexFirst : FlatFirst, Mm(100), Mm(5));

        Assert.Equal(lens.Longitudinal(Mm(5)).Millimetres, thin.Millimetres, 0.01 * thin.Millimetres);
    }

    /// <summary>Third order: half the aperture has a quarter of the aberration and an eighth of the blur, the reason for the small stops of single-lens glasses.</summary>
    [Fact]
    public void Half_the_aperture_has_an_eighth_of_the_blur()
    {
        Assert.Equal(4, ThinLens.Longitudinal(1.52, 1, Mm(600), Mm(20)) / ThinLens.Longitudinal(1.52, 1, Mm(600), Mm(10)), 9);
        Assert.Equal(8, ThinLens.LeastBlur(1.52, 1, Mm(600), Mm(40)) / ThinLens.LeastBlur(1.52, 1, Mm(600), Mm(20)), 9);
    }

    /// <summary>Crown 1.51680, 64.17 and flint 1.62004, 36.37 (published catalogue values of BK7 and F2): powers +2.308273 and -1.308273, so 433.224 and -764.366 mm for one metre.</summary>
    [Fact]
    public void An_achromat_of_crown_and_flint_has_the_published_powers()
    {
        var doublet = Achromat.Of(Mm(1000), 64.17, 36.37);
        Assert.Equal(433.224, doublet.First.Millimetres, 3);
        Assert.Equal(-764.366, doublet.Second.Millimetres, 3);
        Assert.Throws<ArgumentOutOfRangeException>(() => Achromat.Of(Mm(1000), 60, 60));
    }

    [Fact]
    public void The_powers_of_an_achromat_add_up_and_its_colours_cancel() =>
        Gen.Select(Gen.Double[100, 2000], Gen.Double[50, 90], Gen.Double[20, 45]).Sample((f, crown, flint) =>
        {
            var doublet = Achromat.Of(Mm(f), crown, flint);
            var (first, second) = (1 / doublet.First.Millimetres, 1 / doublet.Second.Millimetres);
            return Math.Abs(((first + second) * f) - 1) < 1e-9 && Math.Abs((first / crown) + (second / flint)) < 1e-12;
        });

    private static Length Mm(double millimetres) => Length.FromMillimetres(millimetres);
}
