using InscriptionLab.Photos;
using Xunit;

namespace InscriptionLab.Core.Tests.Photos;

public sealed class CameraCalibrationTests
{
    private static readonly CameraCalibration Camera = new(4000, 3000, 3600, 3610, 2010.5, 1480.5, [-0.1, 0.02, 0.001, -0.002, 0], 0.2, 12);

    /// <summary>Half the size: pixel centres lie at (x + 0.5) / 2 - 0.5, so 2010.5 goes to 1005 and 1480.5 to 740; distortion is a matter of directions and stays.</summary>
    [Fact]
    public void A_smaller_photo_of_the_same_shape_has_everything_scaled_about_the_outer_corner()
    {
        var half = Camera.For(2000, 1500)!;

        Assert.Equal((2000, 1500), (half.Width, half.Height));
        Assert.Equal((1800, 1805), (half.FocalX, half.FocalY));
        Assert.Equal((1005, 740), (half.PrincipalX, half.PrincipalY));
        Assert.Equal(Camera.Distortion, half.Distortion);
        Assert.Equal(Camera, half.For(4000, 3000));
    }

    /// <summary>1333 x 1000 is 4000 x 3000 to a third of a pixel; a photo that was cropped or turned is another matter.</summary>
    [Theory]
    [InlineData(1333, 1000, true)]
    [InlineData(4000, 2250, false)]
    [InlineData(3000, 4000, false)]
    [InlineData(4000, 2990, false)]
    public void Another_shape_has_no_calibration(int width, int height, bool same) => Assert.Equal(same, Camera.For(width, height) is not null);
}
