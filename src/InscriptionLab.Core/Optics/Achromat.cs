using System;
using InscriptionLab.Measures;

namespace InscriptionLab.Optics;

/// <summary>The two lenses of a thin achromatic doublet in contact.</summary>
/// <param name="First">Focal length of the first glass's lens.</param>
/// <param name="Second">Focal length of the second glass's lens, negative for the weaker.</param>
public sealed record Achromat(Length First, Length Second)
{
    /// <summary>Gives the doublet of a focal length whose two named colours share one focus: powers V1/(V1-V2) and -V2/(V1-V2) of the whole.</summary>
    /// <param name="focalLength">Focal length of the doublet.</param>
    /// <param name="firstAbbe">Abbe number of the first glass (crown about 60).</param>
    /// <param name="secondAbbe">Abbe number of the second glass (flint about 36).</param>
    /// <exception cref="ArgumentOutOfRangeException">The two glasses disperse alike, or a number is not above zero.</exception>
    public static Achromat Of(Length focalLength, double firstAbbe, double secondAbbe)
    {
        Positive.Check(focalLength, nameof(focalLength));
        Positive.Check(firstAbbe, nameof(firstAbbe));
        Positive.Check(secondAbbe, nameof(secondAbbe));
        const double LeastDifference = 0.1;
        var difference = firstAbbe - secondAbbe;
        if (Math.Abs(difference) < LeastDifference)
        {
            throw new ArgumentOutOfRangeException(nameof(secondAbbe), secondAbbe, "Two glasses that disperse alike make no achromat.");
        }

        return new Achromat(focalLength * (difference / firstAbbe), focalLength * (-difference / secondAbbe));
    }
}
