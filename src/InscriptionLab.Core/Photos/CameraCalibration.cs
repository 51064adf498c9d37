using System;
using System.Collections.Immutable;

namespace InscriptionLab.Photos;

/// <summary>A camera's focal lengths, principal point and distortion (D. C. Brown's radial and decentring terms), for photos of one size.</summary>
/// <param name="Width">Width of the photos in pixels.</param>
/// <param name="Height">Height of the photos in pixels.</param>
/// <param name="FocalX">Focal length across, in pixels.</param>
/// <param name="FocalY">Focal length down, in pixels.</param>
/// <param name="PrincipalX">X of the principal point in pixels.</param>
/// <param name="PrincipalY">Y of the principal point in pixels.</param>
/// <param name="Distortion">Five coefficients k1, k2, p1, p2, k3, pure numbers.</param>
/// <param name="RmsPixels">Root mean square of what is left at the corners, in pixels.</param>
/// <param name="Photos">Photos it was worked out from.</param>
public sealed record CameraCalibration(
    int Width,
    int Height,
    double FocalX,
    double FocalY,
    double PrincipalX,
    double PrincipalY,
    ImmutableArray<double> Distortion,
    double RmsPixels,
    int Photos)
{
    /// <summary>Number of distortion coefficients.</summary>
    public const int Coefficients = 5;

    /// <summary>How far the shape of a photo may differ from that of the calibration, as a share: half a row of pixels.</summary>
    private const double ShapeTolerance = 0.002;

    /// <summary>Gives the calibration for photos of another size of the same shape, scaled evenly; null where the shape differs, for then the photo was cropped or turned.</summary>
    public CameraCalibration? For(int width, int height)
    {
        var scale = width / (double)Width;
        return Math.Abs((height / (scale * Height)) - 1) > ShapeTolerance
            ? null
            : this with
            {
                Width = width,
                Height = height,
                FocalX = FocalX * scale,
                FocalY = FocalY * scale,
                PrincipalX = ((PrincipalX + 0.5) * scale) - 0.5,
                PrincipalY = ((PrincipalY + 0.5) * scale) - 0.5,
            };
    }
}
