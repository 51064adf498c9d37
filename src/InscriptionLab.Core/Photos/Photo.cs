using InscriptionLab.Imaging;

namespace InscriptionLab.Photos;

/// <summary>A photo as shown upright: the file's orientation tag is already applied, once.</summary>
/// <param name="File">File name as the user gave it.</param>
/// <param name="Sha256">SHA-256 of the file's bytes, 64 lower-case hexadecimal digits.</param>
/// <param name="Colour">Pixels, upright.</param>
/// <param name="Gray">The same pixels in grey (ITU-R BT.601 weights).</param>
/// <param name="Lens">What the file says of camera and lens.</param>
/// <param name="Quality">How the photo was exposed and focused.</param>
public sealed record Photo(string File, string Sha256, ColourImage Colour, GrayImage Gray, LensFacts Lens, PhotoQuality Quality);
