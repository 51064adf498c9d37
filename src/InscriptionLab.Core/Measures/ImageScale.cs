using System;

namespace InscriptionLab.Measures;

/// <summary>How many pixels a millimetre covers in one plane of a photo, with its relative standard uncertainty.</summary>
public sealed record ImageScale
{
    /// <summary>Makes a scale.</summary>
    /// <param name="pixelsPerMillimetre">Pixels per millimetre, above zero.</param>
    /// <param name="relativeUncertainty">Relative standard uncertainty (k = 1), zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range or not finite.</exception>
    public ImageScale(double pixelsPerMillimetre, double relativeUncertainty)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(pixelsPerMillimetre);
        ArgumentOutOfRangeException.ThrowIfNegative(relativeUncertainty);
        if (!double.IsFinite(pixelsPerMillimetre) || !double.IsFinite(relativeUncertainty))
        {
            throw new ArgumentOutOfRangeException(nameof(pixelsPerMillimetre), "A scale must be finite.");
        }

        PixelsPerMillimetre = pixelsPerMillimetre;
        RelativeUncertainty = relativeUncertainty;
    }

    /// <summary>Gets the pixels per millimetre.</summary>
    public double PixelsPerMillimetre { get; }

    /// <summary>Gets the relative standard uncertainty (k = 1).</summary>
    public double RelativeUncertainty { get; }
}
