using System;
using System.Linq;
using CsCheck;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Measures;
using Xunit;

namespace InscriptionLab.Core.Tests.Cells;

/// <summary>Outside checks: W. Gander, G. H. Golub, R. Strebel, "Least-squares fitting of circles and ellipses", BIT 34 (1994) 558-578.</summary>
public sealed class CurveFitTests
{
    private static readonly PixelPoint[] CirclePoints = [new(1, 7), new(2, 6), new(5, 8), new(7, 7), new(9, 5), new(3, 7)];

    private static readonly PixelPoint[] EllipsePoints =
        [new(1, 7), new(2, 6), new(5, 8), new(7, 7), new(9, 5), new(3, 7), new(6, 2), new(8, 4)];

    [Fact]
    public void The_circle_of_Gander_Golub_and_Strebel_comes_out_geometrically()
    {
        var circle = CircleFit.Geometric(CirclePoints);
        Assert.Equal(4.739782, circle.CentreX, 5);
        Assert.Equal(2.983533, circle.CentreY, 5);
        Assert.Equal(4.714226, circle.Radius, 5);
        Assert.Equal(1.107971, circle.ResidualNorm, 5);
    }

    [Fact]
    public void The_linear_circle_differs_on_the_same_short_arc()
    {
        var circle = CircleFit.Linear(CirclePoints);
        Assert.Equal(4.74233, circle.CentreX, 4);
        Assert.Equal(3.83512, circle.CentreY, 4);
        Assert.Equal(4.10876, circle.Radius, 4);
    }

    [Fact]
    public void The_ellipse_of_Gander_Golub_and_Strebel_comes_out_geometrically()
    {
        var ellipse = EllipseFit.Geometric(EllipsePoints);
        Assert.Equal(2.69961, ellipse.CentreX, 4);
        Assert.Equal(3.81596, ellipse.CentreY, 4);
        Assert.Equal(6.51872, ellipse.SemiMajor, 4);
        Assert.Equal(3.03189, ellipse.SemiMinor, 4);
        Assert.Equal(0.35962, ellipse.Rotation, 4);
        Assert.Equal(1.171881, ellipse.ResidualNorm, 5);
    }

    /// <summary>The direct fit's minimum on the same points, computed independently of this program.</summary>
    [Fact]
    public void The_direct_ellipse_of_the_same_points_is_much_smaller()
    {
        var ellipse = EllipseFit.Direct(EllipsePoints)!;
        Assert.Equal(5.06388, ellipse.CentreX, 4);
        Assert.Equal(5.06975, ellipse.CentreY, 4);
        Assert.Equal(3.77566, ellipse.SemiMajor, 4);
        Assert.Equal(2.64233, ellipse.SemiMinor, 4);
        Assert.Equal(-0.38612, ellipse.Rotation, 4);
    }

    [Fact]
    public void Exact_points_give_back_their_ellipse() =>
        Gen.Select(Gen.Double[-500, 500], Gen.Double[-500, 500], Gen.Double[20, 800], Gen.Double[0.3, 0.9999], Gen.Double[-1.5, 1.5]).Sample((x, y, a, ratio, rotation) =>
        {
            var points = Enumerable.Range(0, 40).Select(i => On(x, y, a, a * ratio, rotation, i * Math.Tau / 40)).ToArray();
            var direct = EllipseFit.Direct(points)!;
            var fitted = EllipseFit.Geometric(points, direct);
            return Math.Abs(fitted.SemiMajor - a) < 1e-6 * a && Math.Abs(fitted.SemiMinor - (a * ratio)) < 1e-6 * a && Math.Abs(fitted.CentreX - x) < 1e-5 * a;
        });

    [Fact]
    public void A_near_circle_of_many_points_keeps_its_axes_to_a_millionth()
    {
        var points = Enumerable.Range(0, 720).Select(i => On(600.25, 450.75, 225.0001, 225, 0.4, i * Math.Tau / 720)).ToArray();
        var fitted = EllipseFit.Geometric(points, EllipseFit.Direct(points));
        Assert.Equal(225.0001, fitted.SemiMajor, 5);
        Assert.Equal(225, fitted.SemiMinor, 5);
    }

    [Theory]
    [InlineData(0, 5, 2)]
    [InlineData(10, 0, 0)]
    [InlineData(13, 0, 3)]
    [InlineData(0, 0, -3)]
    public void The_distance_from_an_ellipse_is_signed(double x, double y, double distance) =>
        Assert.Equal(distance, EllipseFit.SignedDistance(new PixelPoint(x, y), 0, 0, 10, 3, 0), 9);

    [Fact]
    public void Points_on_a_line_have_no_circle() =>
        Assert.Throws<ArgumentException>(() => CircleFit.Linear([new PixelPoint(0, 0), new PixelPoint(1, 1)]));

    private static PixelPoint On(double x, double y, double a, double b, double rotation, double angle)
    {
        var (sin, cos) = Math.SinCos(rotation);
        var (s, c) = Math.SinCos(angle);
        return new PixelPoint(x + (a * c * cos) - (b * s * sin), y + (a * c * sin) + (b * s * cos));
    }
}
