using System;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Pictures;
using Xunit;

namespace InscriptionLab.Vision.Tests.Pictures;

public sealed class PicturePainterTests
{
    [Fact]
    public void A_mark_at_whole_numbers_covers_the_pixel_whose_centre_lies_there()
    {
        var painted = PicturePainter.Paint(new GrayImage(9, 9, new byte[81]), [new Mark([new PixelPoint(2, 5), new PixelPoint(6, 5)], Closed: false, MarkInk.Axis)]);

        byte At(int x, int y) => painted.Pixels[((y * 9) + x) * ColourImage.Channels];
        Assert.True(At(4, 5) > 200);
        Assert.True(At(4, 5) > 2 * At(4, 4));
        Assert.True(At(4, 5) > 2 * At(4, 6));
    }

    [Fact]
    public void Painting_leaves_the_picture_itself_alone()
    {
        var picture = new ColourImage(8, 8, new byte[8 * 8 * 3]);

        _ = PicturePainter.Paint(picture, [new Mark([new PixelPoint(0, 0), new PixelPoint(7, 7)], Closed: false, MarkInk.Letter)]);

        Assert.Equal(-1, picture.Pixels.IndexOfAnyExcept((byte)0));
    }

    [Fact]
    public void A_picture_survives_its_png_file_bit_for_bit()
    {
        var pixels = new byte[16 * 5];
        new System.Random(3).NextBytes(pixels);
        var file = System.IO.Path.GetTempFileName();
        try
        {
            System.IO.File.WriteAllBytes(file, PictureEncoder.ToPng(new GrayImage(16, 5, pixels)));
            using var read = OpenCvSharp.Cv2.ImRead(file, OpenCvSharp.ImreadModes.Grayscale);
            Assert.Equal(pixels, read.AsSpan<byte>().ToArray());
        }
        finally
        {
            System.IO.File.Delete(file);
        }
    }
}
