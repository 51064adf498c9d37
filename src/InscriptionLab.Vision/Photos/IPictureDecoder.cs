using System;
using InscriptionLab.Imaging;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Vision.Photos;

/// <summary>Turns the bytes of a file into pixels. Native libraries do this work, so whoever does it may end at any photo of a stranger's.</summary>
public interface IPictureDecoder
{
    /// <summary>Decodes a picture as it is stored: the orientation tag of JPEG, PNG, WebP, TIFF and BMP is not applied, that of the HEIF family is.</summary>
    /// <param name="file">The whole file.</param>
    /// <param name="isHeif">True for HEIC and AVIF.</param>
    /// <returns>Blue, green, red, 8 bits each; null where the file is cut off, damaged or beyond the decoder's means.</returns>
    /// <exception cref="InscriptionLabException">It took too long (<see cref="InscriptionLabException.MayPass"/>), or the decoder cannot be started.</exception>
    ColourImage? Pixels(ReadOnlySpan<byte> file, bool isHeif);

    /// <summary>Reads the header of a HEIC or AVIF file, which only the native library understands.</summary>
    /// <param name="file">The whole file.</param>
    /// <returns>What it says; null where it is damaged.</returns>
    /// <exception cref="InscriptionLabException">It took too long (<see cref="InscriptionLabException.MayPass"/>), or the decoder cannot be started.</exception>
    HeifHeader? Header(ReadOnlySpan<byte> file);
}

/// <summary>What the header of a HEIC or AVIF file says.</summary>
/// <param name="Width">Columns, upright.</param>
/// <param name="Height">Rows, upright.</param>
/// <param name="EquivalentMillimetres">Focal length for the 36 x 24 mm frame; 0 where none is written.</param>
public readonly record struct HeifHeader(int Width, int Height, int EquivalentMillimetres);
