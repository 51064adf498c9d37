using System;
using InscriptionLab.Measures;

namespace InscriptionLab.Imaging;

/// <summary>Leads from the points of a derived picture (a strip, a line crop) to the points of the photo, upright.</summary>
public interface IPixelMap
{
    /// <summary>Gives the photo point shown at a point of the derived picture. Points outside the derived picture are extrapolated where the geometry allows.</summary>
    PixelPoint ToPhoto(PixelPoint point);

    /// <summary>Gives the photo points of a straight run of evenly spaced points. Maps that can share work between neighbours override it; the results are those of <see cref="ToPhoto"/>.</summary>
    /// <param name="first">First point of the derived picture.</param>
    /// <param name="stepX">Step from point to point, X part.</param>
    /// <param name="stepY">Step from point to point, Y part.</param>
    /// <param name="photoPoints">Filled with the photo points, as many as it holds.</param>
    void FillRun(PixelPoint first, double stepX, double stepY, Span<PixelPoint> photoPoints)
    {
        for (var i = 0; i < photoPoints.Length; i++)
        {
            photoPoints[i] = ToPhoto(new PixelPoint(first.X + (i * stepX), first.Y + (i * stepY)));
        }
    }
}
