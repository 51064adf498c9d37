namespace InscriptionLab.Photos;

/// <summary>How a photo was focused and exposed; pure numbers.</summary>
/// <param name="Sharpness">Variance of the Laplacian of the grey picture, grey levels squared; larger is sharper.</param>
/// <param name="BurntFraction">Share of pixels at 250 or above, 0 to 1.</param>
/// <param name="BlackFraction">Share of pixels at 5 or below, 0 to 1.</param>
public sealed record PhotoQuality(double Sharpness, double BurntFraction, double BlackFraction)
{
    /// <summary>Gets the quality at which a JPEG file was packed, 1 to 100, on the scale of the Independent JPEG Group by the file's tables; null for other formats.</summary>
    public int? JpegQuality { get; init; }
}
