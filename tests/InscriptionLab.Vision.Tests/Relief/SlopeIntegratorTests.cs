using System;
using InscriptionLab.Imaging;
using InscriptionLab.Vision.Relief;
using Xunit;

namespace InscriptionLab.Vision.Tests.Relief;

public sealed class SlopeIntegratorTests
{
    private const int Width = 160;
    private const int Height = 120;

    [Fact]
    public void A_bell_comes_back_from_its_slopes()
    {
        var heights = SlopeIntegrator.Integrate(Slopes((x, y) => -x / 64 * Bell(x, y)), Slopes((x, y) => -y / 64 * Bell(x, y)), 1e6);
        var rest = heights[0, 0];
        for (var y = 0; y < Height; y += 7)
        {
            for (var x = 0; x < Width; x += 7)
            {
                Assert.Equal(Bell(x - 80, y - 60), heights[x, y] - rest, 0.01);
            }
        }
    }

    /// <summary>A groove along Y, slopes known along X only.</summary>
    [Fact]
    public void Slopes_in_one_direction_give_a_groove_across_it()
    {
        double Groove(double x) => -3 * Math.Exp(-x * x / 50);
        var heights = SlopeIntegrator.Integrate(Slopes((x, _) => -x / 25 * Groove(x)), 1, 0, 1e6);
        for (var x = 10; x < Width - 10; x += 5)
        {
            Assert.Equal(Groove(x - 80), heights[x, 60] - heights[10, 60], 0.05);
        }
    }

    [Fact]
    public void Slow_waves_are_damped_and_quick_ones_kept()
    {
        double Amplitude(double wave)
        {
            var heights = SlopeIntegrator.Integrate(Slopes((x, _) => 2 * Math.PI / wave * Math.Cos(2 * Math.PI * x / wave)), Slopes((_, _) => 0), 40);
            return (heights[80 + (int)(wave / 4), 60] - heights[80 - (int)(wave / 4), 60]) / 2;
        }

        Assert.Equal(1 / (1 + (20.0 * 20 / (40 * 40))), Amplitude(20), 0.03);
        Assert.Equal(0.5, Amplitude(40), 0.03);
    }

    private static double Bell(double x, double y) => 2 * Math.Exp(-((x * x) + (y * y)) / 128);

    private static FloatImage Slopes(Func<double, double, double> at)
    {
        var values = new float[Width * Height];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = (float)at((i % Width) - 80, (i / Width) - 60);
        }

        return new FloatImage(Width, Height, values);
    }
}
