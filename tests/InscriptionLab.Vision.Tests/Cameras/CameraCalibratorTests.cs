using System.IO;
using System.Linq;
using System.Threading;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Vision.Cameras;
using InscriptionLab.Vision.Photos;
using Xunit;

namespace InscriptionLab.Vision.Tests.Cameras;

/// <summary>Outside check: OpenCV's sample photos left01 to left14 (package opencv-doc) with the widely printed result for windows of 11 pixels.</summary>
public sealed class CameraCalibratorTests
{
    private const string Samples = "/usr/share/doc/opencv-doc/examples/data";

    [Fact]
    public void OpenCVs_chessboard_photos_give_the_published_camera()
    {
        Assert.SkipUnless(Directory.Exists(Samples), "the package opencv-doc is not installed");
        var it = Found(11);
        Assert.Equal(13, it.Photos);
        Assert.Equal(0.408695, it.RmsPixels, 0.001);
        Assert.Equal(536.07345, it.FocalX, 0.5);
        Assert.Equal(536.01637, it.FocalY, 0.5);
        Assert.Equal(342.37047, it.PrincipalX, 0.5);
        Assert.Equal(235.53687, it.PrincipalY, 0.5);
        Assert.Equal(-0.265090, it.Distortion[0], 0.005);
    }

    [Fact]
    public void Windows_clear_of_the_neighbours_leave_half_the_residual()
    {
        Assert.SkipUnless(Directory.Exists(Samples), "the package opencv-doc is not installed");
        Assert.True(Found(null).RmsPixels < 0.25);
    }

    [Fact]
    public void A_straightened_photo_keeps_the_size_and_has_the_calibrations_focal_length()
    {
        Assert.SkipUnless(Directory.Exists(Samples), "the package opencv-doc is not installed");
        var straight = PhotoStraightener.Run(Photos()[0], Found(null));
        Assert.Equal(640, straight.Colour.Width);
        Assert.Equal(533, straight.Lens.FocalLength!.Value.Pixels, 1.0);
    }

    [Fact]
    public void A_calibration_fits_photos_of_its_shape_only()
    {
        var it = new CameraCalibration(4000, 3000, 3000, 3001, 2000, 1500, [0, 0, 0, 0, 0], 0.2, 10);
        Assert.Equal(1500, it.For(2000, 1500)!.FocalX, 9);
        Assert.Null(it.For(3000, 4000));
    }

    private static Photo[] Photos() => [.. Directory.GetFiles(Samples, "left*.jpg").Where(file => Path.GetFileName(file).Length == "left01.jpg".Length).Order().Select(file => new PhotoReader(new PhotoLimits()).Read(file))];

    private static CameraCalibration Found(int? window) =>
        Assert.IsType<Outcome<CameraCalibration>.Found>(CameraCalibrator.Run(Photos(), 9, 6, window, CancellationToken.None)).Value;
}
