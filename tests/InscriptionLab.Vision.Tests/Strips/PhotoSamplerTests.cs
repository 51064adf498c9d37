using System;
using InscriptionLab.Imaging;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Strips;
using Xunit;

namespace InscriptionLab.Vision.Tests.Strips;

public sealed class PhotoSamplerTests
{
    [Fact]
    public void A_map_that_changes_nothing_gives_the_same_pixels()
    {
        var picture = Waves(40, 30, 0.7);
        Assert.Equal(picture.Pixels.ToArray(), PhotoSampler.Sample(picture, new FlatStripMap(1), 40, 30).Pixels.ToArray());
    }

    [Fact]
    public void Shrinking_averages_and_does_not_alias()
    {
        // Stripes one pixel wide, shrunk by three: every result pixel is the mean grey, not black or white.
        var picture = Waves(300, 300, Math.PI);
        var small = PhotoSampler.Sample(picture, new FlatStripMap(1 / 3.0), 100, 100);
        foreach (var level in small.Pixels[(100 * 10)..(100 * 90)])
        {
            Assert.InRange(level, 80, 170);
        }
    }

    [Fact]
    public void Magnifying_twice_keeps_a_wave_of_eight_pixels_within_two_grey_levels()
    {
        var picture = Waves(80, 80, Math.PI / 4);
        var large = PhotoSampler.Sample(picture, new FlatStripMap(2), 160, 160);
        for (var x = 20; x < 140; x++)
        {
            var expected = 127 + (100 * Math.Cos(((((x + 0.5) / 2) - 0.5) * Math.PI) / 4));
            Assert.True(Math.Abs(large[x, 80] - expected) <= 2, $"{x}: {large[x, 80]} for {expected:0.0}");
        }
    }

    private static GrayImage Waves(int width, int height, double radiansPerPixel)
    {
        var pixels = new byte[width * height];
        for (var i = 0; i < pixels.Length; i++)
        {
            pixels[i] = (byte)Math.Round(127 + (100 * Math.Cos((i % width) * radiansPerPixel)));
        }

        return new GrayImage(width, height, pixels);
    }
}
