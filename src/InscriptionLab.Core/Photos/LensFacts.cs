using InscriptionLab.Measures;

namespace InscriptionLab.Photos;

/// <summary>What a photo's EXIF data says of its lens; null where it is silent.</summary>
/// <param name="FocalLength">Focal length in pixels of this photo, from the 35 mm equivalent (by the diagonal) where present.</param>
/// <param name="Orientation">EXIF orientation tag, 1 to 8, which was applied on reading; 1 where absent.</param>
public sealed record LensFacts(PixelLength? FocalLength, int Orientation)
{
    /// <summary>Gets the facts of a file without EXIF data.</summary>
    public static LensFacts Unknown { get; } = new(null, 1);
}
