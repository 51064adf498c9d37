using System.Collections.Generic;
using InscriptionLab.Advice;
using InscriptionLab.Readings;

namespace InscriptionLab.App.Examining;

/// <summary>What is said of lines whose grooves are unlike in brightness, and what that is worth.</summary>
internal static class ToneWords
{
    /// <summary>Gives the sentence; none where the lines do not differ.</summary>
    internal static IEnumerable<string> Of(Reading reading, LetteringMeasures measures)
    {
        if (LineTones.Unlike(measures.Tones) is var (bright, dark))
        {
            yield return $"The grooves of '{reading.Lines[bright.Line].Text}' are brighter than the metal beside them, those of '{reading.Lines[dark.Line].Text}' darker. Metal cut later has had less time to tarnish (common practice), but cleaning, another filling or a reflection over one line makes them unlike as well. This is an observation and no proof: look at both lines under the same lamp from two sides.";
        }
    }
}
