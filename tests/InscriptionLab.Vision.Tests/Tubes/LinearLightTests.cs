using System;
using InscriptionLab.Imaging;
using InscriptionLab.Vision.Tubes;
using Xunit;

namespace InscriptionLab.Vision.Tests.Tubes;

public sealed class LinearLightTests
{
    /// <summary>Two columns, two rows: black and white above, levels 188 and 0 below in blue; green and red all 128.</summary>
    private static readonly ColourImage Picture = new(2, 2, [0, 128, 128, 255, 128, 128, 188, 128, 128, 0, 128, 128]);

    [Theory]
    [InlineData(0, 0, 0)]
    [InlineData(0.5, 0, 0.5)]
    [InlineData(0, 0.5, 0.2514)]
    [InlineData(0.25, 0.5, 0.3136)]
    public void Light_is_mixed_not_levels(double x, double y, double blue)
    {
        // IEC 61966-2-1: level 188 is 0.5029 of the light, level 128 is 0.2159.
        Span<float> sum = [0, 0, 0];

        Assert.True(new LinearLight(Picture).AddTo(x, y, sum));
        Assert.Equal(blue, sum[0], 3);
        Assert.Equal(0.2159, sum[1], 3);
        Assert.Equal(0.2159, sum[2], 3);
    }

    [Theory]
    [InlineData(-0.01, 0)]
    [InlineData(0, -0.01)]
    [InlineData(1, 0)]
    [InlineData(0, 1)]
    public void Outside_there_is_none(double x, double y)
    {
        Span<float> sum = [0, 0, 0];

        Assert.False(new LinearLight(Picture).AddTo(x, y, sum));
        Assert.Equal(0, sum[0] + sum[1] + sum[2]);
    }
}
