using System;
using System.Collections.Generic;
using System.Linq;

namespace InscriptionLab.Advice;

/// <summary>
/// Compares how bright the grooves of lines are. Grooves that are bright in one line and dark in another of the same photo are an observation that later cutting would explain, since
/// metal laid bare later has had less time to tarnish (common practice), and so would cleaning, another filling or a reflection.
/// </summary>
public static class LineTones
{
    /// <summary>Light over the metal's, less 1, from which on grooves count as bright or as dark (a choice: stains of bare metal come to as much).</summary>
    private const double Clear = 0.1;

    /// <summary>Standard uncertainties by which two lines must differ.</summary>
    private const double Sure = 4;

    /// <summary>Gives the line with the brightest grooves and that with the darkest where they are surely unlike; null otherwise.</summary>
    public static (LineTone Bright, LineTone Dark)? Unlike(IReadOnlyList<LineTone> tones)
    {
        ArgumentNullException.ThrowIfNull(tones);
        if (tones.Count < 2)
        {
            return null;
        }

        var (bright, dark) = (tones.MaxBy(tone => tone.OverMetal)!, tones.MinBy(tone => tone.OverMetal)!);
        var uncertainty = Math.Sqrt((bright.Uncertainty * bright.Uncertainty) + (dark.Uncertainty * dark.Uncertainty));
        return bright.OverMetal >= Clear && dark.OverMetal <= -Clear && bright.OverMetal - dark.OverMetal >= Sure * uncertainty ? (bright, dark) : null;
    }
}
