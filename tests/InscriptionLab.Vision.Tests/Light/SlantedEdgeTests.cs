using System;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Light;
using Xunit;

namespace InscriptionLab.Vision.Tests.Light;

/// <summary>
/// Drawn edges of known blur. A Gaussian of standard deviation s has the transfer exp(-2 (pi s f)2), which is one half at f = sqrt(ln 2 / 2) / (pi s), and its integral rises from 10 to
/// 90 % over twice the normal distribution's 0.9 quantile, 2.5631 s (closed forms).
/// </summary>
public sealed class SlantedEdgeTests(ITestOutputHelper output)
{
    private const int Side = 120;

    [Theory]
    [InlineData(0.8, 3, 0)]
    [InlineData(0.8, 7, 1.5)]
    [InlineData(1.2, 5, 1.5)]
    [InlineData(2, 4, 1.5)]
    [InlineData(2, 94, 1.5)]
    [InlineData(3, 38, 1.5)]
    [InlineData(4, -6, 1.5)]
    public void A_gaussian_blur_is_measured_as_its_closed_form_says(double sigma, double degrees, double noise)
    {
        var (edge, _) = Measured(Drawn(sigma, degrees, 0.6, 0.06, noise), degrees);

        Assert.NotNull(edge);
        var expected = Math.Sqrt(Math.Log(2) / 2) / (Math.PI * sigma);
        output.WriteLine(FormattableString.Invariant($"MTF50 {edge.Mtf50:0.0000}, closed form {expected:0.0000}; rise {edge.Rise:0.00}, closed form {2.5631 * sigma:0.00}"));
        Assert.InRange(edge.Mtf50, 0.93 * expected, 1.07 * expected);
        Assert.InRange(edge.Rise, 0.93 * 2.5631 * sigma, 1.07 * 2.5631 * sigma);
    }

    [Fact]
    public void An_edge_between_two_sides_as_bright_tells_nothing() => Assert.Equal(SlantedEdge.Fault.Faint, Measured(Drawn(1, 5, 0.5, 0.45, 1.5), 5).Fault);

    [Fact]
    public void An_edge_along_a_row_of_pixels_tells_nothing() => Assert.Equal(SlantedEdge.Fault.Straight, Measured(Drawn(1, 0, 0.6, 0.06, 0), 0).Fault);

    [Fact]
    public void An_edge_beside_a_reflection_tells_nothing()
    {
        // A bright line runs twelve pixels inside the edge.
        var picture = Drawn(1, 5, 0.6, 0.06, 1.5, away => 0.5 * Math.Exp(-Math.Pow((away + 12) / 2, 2)));
        Assert.Equal(SlantedEdge.Fault.Mirrored, Measured(picture, 5).Fault);
    }

    [Fact]
    public void An_edge_at_the_side_of_the_picture_tells_nothing() =>
        Assert.Equal(SlantedEdge.Fault.OutOfPicture, SlantedEdge.Of(Drawn(1, 5, 0.6, 0.06, 0), new PixelPoint(10, 60), (1, 0), 24, 20).Fault);

    private static (SlantedEdge? Edge, SlantedEdge.Fault Fault) Measured(GrayImage picture, double degrees)
    {
        // The direction handed in is half a degree off and the place a pixel and a half, as outlines are.
        var (sin, cos) = Math.SinCos((degrees + (degrees == 0 ? 0 : 0.5)) * Math.PI / 180);
        return SlantedEdge.Of(picture, new PixelPoint((Side / 2.0) - (1.5 * sin), (Side / 2.0) + (1.5 * cos)), (cos, sin), 24, 20);
    }

    /// <summary>An edge through the middle, coded as sRGB: bright on the side toward which the picture's Y grows less.</summary>
    private static GrayImage Drawn(double sigma, double degrees, double bright, double dark, double noise, Func<double, double>? beside = null)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        var random = new Random(3);
        var pixels = new byte[Side * Side];
        for (var i = 0; i < pixels.Length; i++)
        {
            var away = (((i / Side) - (Side / 2.0)) * cos) - (((i % Side) - (Side / 2.0)) * sin);
            var light = dark + ((bright - dark) * (1 - Normal(away / sigma))) + (beside?.Invoke(away) ?? 0);
            var coded = light <= 0.0031308 ? 12.92 * light : (1.055 * Math.Pow(light, 1 / 2.4)) - 0.055;
            var added = noise * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
            pixels[i] = (byte)Math.Clamp(Math.Round((255 * coded) + added), 0, 255);
        }

        return new GrayImage(Side, Side, pixels);
    }

    /// <summary>The normal distribution, by a sum over its density; good to a millionth.</summary>
    private static double Normal(double to)
    {
        const int Steps = 2000;
        const double From = -8;
        if (to <= From)
        {
            return 0;
        }

        var (sum, step) = (0.0, (Math.Min(to, -From) - From) / Steps);
        for (var i = 0; i < Steps; i++)
        {
            var at = From + ((i + 0.5) * step);
            sum += Math.Exp(-at * at / 2);
        }

        return sum * step / Math.Sqrt(2 * Math.PI);
    }
}
