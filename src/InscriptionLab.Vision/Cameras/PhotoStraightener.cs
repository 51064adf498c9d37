using System;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Cameras;

/// <summary>Takes a lens's distortion out of a photo: the photo that a pinhole camera with its axis through the middle would have taken.</summary>
public static class PhotoStraightener
{
    /// <summary>Straightens a photo; its focal length is then the calibration's.</summary>
    /// <param name="photo">Photo.</param>
    /// <param name="calibration">Calibration for photos of this size.</param>
    /// <exception cref="ArgumentException">The calibration is for photos of another size.</exception>
    public static Photo Run(Photo photo, CameraCalibration calibration)
    {
        ArgumentNullException.ThrowIfNull(photo);
        ArgumentNullException.ThrowIfNull(calibration);
        var (width, height) = (photo.Colour.Width, photo.Colour.Height);
        if (width != calibration.Width || height != calibration.Height)
        {
            throw new ArgumentException("The calibration is for photos of another size.", nameof(calibration));
        }

        var focal = (calibration.FocalX + calibration.FocalY) / 2;
        using var seen = Matrix(calibration.FocalX, calibration.FocalY, calibration.PrincipalX, calibration.PrincipalY);
        using var ideal = Matrix(focal, focal, (width - 1) / 2.0, (height - 1) / 2.0);
        using var distortion = Mat.FromPixelData(1, CameraCalibration.Coefficients, MatType.CV_64F, calibration.Distortion.ToArray());
        using var turn = new Mat();
        using var across = new Mat();
        using var down = new Mat();
        Cv2.InitUndistortRectifyMap(seen, distortion, turn, ideal, new Size(width, height), MatType.CV_32FC1, across, down);
        using var colour = NativeImage.View(photo.Colour);
        using var straight = colour.Apply((from, to) => Cv2.Remap(from, to, across, down, InterpolationFlags.Cubic));
        using var grey = straight.Apply((from, to) => Cv2.CvtColor(from, to, ColorConversionCodes.BGR2GRAY));
        return photo with
        {
            Colour = straight.ToColour(),
            Gray = grey.ToGray(),
            Lens = photo.Lens with { FocalLength = PixelLength.FromPixels(focal) },
        };
    }

    private static Mat Matrix(double focalX, double focalY, double principalX, double principalY) =>
        Mat.FromPixelData(3, 3, MatType.CV_64F, new[] { focalX, 0, principalX, 0, focalY, principalY, 0, 0, 1 });
}
