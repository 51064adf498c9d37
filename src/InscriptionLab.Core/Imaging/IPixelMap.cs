using InscriptionLab.Measures;

namespace InscriptionLab.Imaging;

/// <summary>Leads from the points of a derived picture (a strip, a line crop) to the points of the photo, upright.</summary>
public interface IPixelMap
{
    /// <summary>Gives the photo point shown at a point of the derived picture. Points outside the derived picture are extrapolated where the geometry allows.</summary>
    PixelPoint ToPhoto(PixelPoint point);
}
