using System;
using System.Collections.Immutable;

namespace InscriptionLab.Findings;

/// <summary>
/// Words for likelihood ratios, after the bands of the ENFSI Guideline for Evaluative Reporting in Forensic Science (2015) as given by
/// secondary sources; the guideline itself was not at hand. Those sources agree up to 1,000 and disagree above (10,000, 100,000 or
/// 1,000,000 for the upper bands; "limited" or "weak" for the lowest), so that the table goes with every statement that uses its words.
/// </summary>
public static class VerbalScale
{
    /// <summary>Remark that goes with the table.</summary>
    public const string Note =
        "Words after the ENFSI guideline of 2015 as secondary sources give it; they agree up to a ratio of 1,000 and differ above. "
        + "A ratio compares two explanations of the picture; it is not the probability of either.";

    /// <summary>Gets the lower edge of each band, as a ratio, with its words.</summary>
    public static ImmutableArray<(double From, string Words)> Bands { get; } =
    [
        (1, "no support either way"),
        (2, "weak support"),
        (10, "moderate support"),
        (100, "moderately strong support"),
        (1_000, "strong support"),
        (10_000, "very strong support"),
        (1_000_000, "extremely strong support"),
    ];

    /// <summary>Gives the words for a ratio, whichever of the two explanations it supports.</summary>
    /// <param name="log10Ratio">Decimal logarithm of the ratio.</param>
    public static string For(double log10Ratio)
    {
        // An edge belongs to the band above it; the logarithm of an edge may be a hair short of it.
        const double Dust = 1e-9;
        var words = Bands[0].Words;
        foreach (var (from, band) in Bands)
        {
            if (Math.Abs(log10Ratio) >= Math.Log10(from) - Dust)
            {
                words = band;
            }
        }

        return words;
    }
}
