using InscriptionLab.Measures;

namespace InscriptionLab.Advice;

/// <summary>How sharply the tube's outlines stand against the ground, after the slanted edges of ISO 12233 (e-SFR): lens, movement and packing together, whatever is cut on the tube.</summary>
/// <param name="Mtf50">Spatial frequency at which half the contrast is left, cycles a pixel of the photo.</param>
/// <param name="Rise">Distance over which the light rises from 10 to 90 % of the step, across the outline.</param>
/// <param name="Places">Places along the outlines that could be measured; the figures are those of one of the sharpest fifth, since a limb that fades or mirrors only widens an edge.</param>
public sealed record OutlineSharpness(double Mtf50, PixelLength Rise, int Places)
{
    /// <summary>How it is measured, in words.</summary>
    public const string Source = "slanted edges after ISO 12233 (e-SFR), linear light, one of the sharpest places";

    /// <summary>Rise of a Gaussian's integral from 10 to 90 % over its standard deviation: twice the 0.9 quantile of the normal distribution.</summary>
    private const double GaussianRise = 2.5631;

    /// <summary>Gets the standard deviation of the Gaussian blur that rises as far.</summary>
    public PixelLength Blur => PixelLength.FromPixels(Rise.Pixels / GaussianRise);
}
