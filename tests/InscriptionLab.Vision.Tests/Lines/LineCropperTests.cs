using System;
using InscriptionLab.Imaging;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Lines;
using Xunit;

namespace InscriptionLab.Vision.Tests.Lines;

public sealed class LineCropperTests
{
    private const int Side = 300;
    private static readonly LineCropper Cropper = new(new LineCropOptions());

    /// <summary>A photo that grows lighter to the right and, more slowly, downward, so that a crop shows how it was cut.</summary>
    private static readonly Photo Slope = Picture((x, y) => (x * 0.5) + (y * 0.2));

    [Fact]
    public void Ink_fills_its_share_of_the_rows_and_half_a_height_is_left_on_either_side()
    {
        var line = Cut(Slope, DrawnLine.Between(60, 150, 240, 150, 48.64), mirrored: false);

        // Scale 1: 64 rows, 180 columns of ink and 32 on either side come to 244, rounded up to 256.
        Assert.Equal((256, 64), (line.Crop.Width, line.Crop.Height));
        Near(new PixelPoint(60, 150), line.CropToPhoto.ToPhoto(new PixelPoint(37.5, 31.5)));
        Near(new PixelPoint(240, 150), line.CropToPhoto.ToPhoto(new PixelPoint(217.5, 31.5)));
        Assert.Equal(48.64, line.InkHeight.Pixels, 6);
    }

    [Fact]
    public void A_line_from_left_to_right_is_cut_as_it_stands()
    {
        var line = Cut(Slope, DrawnLine.Between(60, 150, 240, 150), mirrored: false);

        Assert.True(Lighter(line, 200, 32, 50, 32));
        Assert.True(Lighter(line, 100, 60, 100, 4));
        Assert.Equal(new LineDirection(Angle.FromDegrees(0), false, false), line.Direction);
    }

    [Fact]
    public void A_line_read_from_right_to_left_is_cut_upside_down()
    {
        var line = Cut(Slope, DrawnLine.Between(240, 150, 60, 150), mirrored: false);

        Assert.True(Lighter(line, 50, 32, 200, 32));
        Assert.True(Lighter(line, 100, 4, 100, 60));
        Assert.True(line.Direction.UpsideDown);
        Assert.Equal(180, Math.Abs(line.Direction.Angle.Degrees), 9);
    }

    [Fact]
    public void A_mirrored_line_is_turned_over_and_read_from_the_other_end()
    {
        var line = Cut(Slope, DrawnLine.Between(60, 150, 240, 150), mirrored: true);

        Assert.True(Lighter(line, 50, 32, 200, 32));
        Assert.True(Lighter(line, 100, 60, 100, 4));
        Assert.Equal((false, true), (line.Direction.UpsideDown, line.Direction.Mirrored));
        Assert.Equal(180, Math.Abs(line.Direction.Angle.Degrees), 9);
        Assert.True(line.InPhoto.TopLeft.X > line.InPhoto.TopRight.X);
    }

    [Fact]
    public void A_line_round_the_tube_is_neither_along_nor_upside_down()
    {
        var line = Cut(Slope, DrawnLine.Between(150, 60, 150, 240), mirrored: false);

        Assert.Equal(90, line.Direction.Angle.Degrees, 9);
        Assert.False(line.Direction.UpsideDown);
    }

    [Fact]
    public void A_bowed_line_is_straightened()
    {
        // A dark parabola 12 px high at half length on light ground.
        var photo = Picture((x, y) => Math.Abs(y - (150 + (12 * (1 - Math.Pow((x - 150) / 90.0, 2))))) < 3 ? 20 : 200);
        var line = Cut(photo, DrawnLine.Between(60, 150, 240, 150, 48.64, bow: 12), mirrored: false);

        for (var x = 60; x < 200; x += 20)
        {
            Assert.True(line.Crop[x, 32] < 80);
        }
    }

    [Fact]
    public void A_very_long_line_keeps_within_the_widest_crop() =>
        Assert.Equal(new LineCropOptions().MaximumWidth, Cut(Slope, DrawnLine.Between(10, 150, 290, 150, 3), mirrored: false).Crop.Width);

    private static LetteringLine Cut(Photo photo, LineTrace trace, bool mirrored) =>
        Cropper.Cut(photo, new Strip(photo.Gray, new FlatStripMap(1), 0, false), trace, mirrored, Probability.One);

    private static bool Lighter(LetteringLine line, int x, int y, int otherX, int otherY) => line.Crop[x, y] > line.Crop[otherX, otherY];

    private static void Near(PixelPoint expected, PixelPoint actual) => Assert.True(expected.DistanceTo(actual).Pixels < 1e-6, $"{actual} is not {expected}");

    private static Photo Picture(Func<int, int, double> grey)
    {
        var pixels = new byte[Side * Side];
        for (var index = 0; index < pixels.Length; index++)
        {
            pixels[index] = (byte)Math.Clamp(grey(index % Side, index / Side), 0, 255);
        }

        return new Photo("drawn", string.Empty, new ColourImage(1, 1, [0, 0, 0]), new GrayImage(Side, Side, pixels), LensFacts.Unknown, new PhotoQuality(0, 0, 0));
    }
}
