using InscriptionLab.Photos;

namespace InscriptionLab.Vision.Photos;

/// <summary>What a file's header says before any pixel is decoded.</summary>
/// <param name="Width">Columns as stored, before the orientation tag is applied.</param>
/// <param name="Height">Rows as stored.</param>
/// <param name="Lens">Orientation and lens data.</param>
/// <param name="OrientationApplied">True where the decoder itself turns the picture (HEIC, AVIF).</param>
/// <param name="Heif">True for the HEIF family (HEIC, AVIF).</param>
internal sealed record PhotoHeader(int Width, int Height, LensFacts Lens, bool OrientationApplied, bool Heif)
{
    /// <summary>Gets the quality at which a JPEG file was packed, 1 to 100; null for other formats.</summary>
    internal int? JpegQuality { get; init; }
}
