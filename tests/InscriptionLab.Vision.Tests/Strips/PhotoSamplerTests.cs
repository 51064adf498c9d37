using System;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Native;
using InscriptionLab.Vision.Strips;
using InscriptionLab.Vision.Tests.Rendering;
using InscriptionLab.Vision.Tests.Tubes;
using OpenCvSharp;
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
    public void A_long_strip_of_a_much_larger_picture_is_sampled_no_denser_than_a_row_of_samples_may_be_long()
    {
        // Eight samples a pixel would be 38,400 in a row, more than the picture library takes.
        var small = PhotoSampler.Sample(Waves(400, 16, Math.PI), new FlatStripMap(1 / 8.0), 4800, 2);

        Assert.InRange(small[20, 0], 80, 170);
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

    [Fact]
    public void A_picture_of_many_bands_shrunk_by_two_and_a_half_keeps_a_long_wave_in_its_place()
    {
        // 2.5 photo pixels a result pixel, three samples each way: the mean over a box of 2.5 pixels takes sin(x) / x off the wave.
        const double Radians = Math.PI / 20;
        var small = PhotoSampler.Sample(Waves(2500, 1500, Radians), new FlatStripMap(0.4), 1000, 600);
        var kept = Math.Sin(1.25 * Radians) / (1.25 * Radians);
        for (var y = 0; y < 600; y += 7)
        {
            for (var x = 2; x < 998; x++)
            {
                var expected = 127 + (100 * kept * Math.Cos((((x + 0.5) / 0.4) - 0.5) * Radians));
                Assert.True(Math.Abs(small[x, y] - expected) <= 2, $"{x}, {y}: {small[x, y]} for {expected:0.0}");
            }
        }
    }

    [Fact]
    public void Samples_between_the_corners_of_a_pixel_lie_where_the_map_of_a_tube_puts_them()
    {
        var map = new CylinderStripMap(CylinderPoseTests.PoseOf(new TubeScene { Tilt = 0.4, Roll = 0.7 }), 200, -1, Angle.FromRadians(-1.2));
        using var positions = new SampleGrid(map, 300, (3, 2)).Positions(10, 14);
        var points = positions.Mat.AsSpan<Vec2f>();
        for (var i = 0; i < points.Length; i++)
        {
            var (column, row) = (i % 900, i / 900);
            var exact = map.ToPhoto(new PixelPoint(((column + 0.5) / 3) - 0.5, 10 + ((row + 0.5) / 2) - 0.5));
            Assert.True(Math.Abs(points[i].Item0 - exact.X) < 0.01 && Math.Abs(points[i].Item1 - exact.Y) < 0.01, $"{i}: {points[i].Item0}, {points[i].Item1} for {exact}");
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void A_map_that_fails_leaves_no_native_picture_behind(int samples)
    {
        const int Failures = 300;
        var grid = new SampleGrid(new FailingMap(), 4, (samples, samples));
        var before = NativeImage.Alive;
        for (var i = 0; i < Failures; i++)
        {
            Assert.Throws<InvalidOperationException>(() => grid.Positions(0, 2).Dispose());
        }

        // Other tests run beside this one and own a few.
        Assert.InRange(NativeImage.Alive - before, -Failures, Failures / 2);
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

    private sealed record FailingMap : IPixelMap
    {
        public PixelPoint ToPhoto(PixelPoint point) => throw new InvalidOperationException();
    }
}
