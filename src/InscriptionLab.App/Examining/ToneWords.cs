using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Advice;
using InscriptionLab.Lines;

namespace InscriptionLab.App.Examining;

/// <summary>
/// What is said of lines whose grooves are unlike in brightness, and what that is worth. Only photos of one view under different lamps can tell: in a single one a reflection over one line
/// looks the same.
/// </summary>
internal static class ToneWords
{
    /// <summary>Photos that must show it, more than half of the view's.</summary>
    private const int Fewest = 2;

    /// <summary>Gives the sentence; null where the lines do not differ under most lamps.</summary>
    internal static string? Of(ImmutableArray<Examination> view)
    {
        var seen = view.SelectMany(Pairs).ToList();
        return seen.Count >= Fewest && 2 * seen.Count > view.Length && seen.TrueForAll(pair => IsSame(pair.Bright, seen[0].Bright) && IsSame(pair.Dark, seen[0].Dark))
            ? $"The grooves of '{seen[0].BrightText}' are brighter than the metal beside them, those of '{seen[0].DarkText}' darker, in {seen.Count} of {view.Length} photos under different lamps. Metal cut later has had less time to tarnish (common practice), but cleaning or another filling makes lines unlike as well. This is an observation and no proof."
            : null;
    }

    private static IEnumerable<(LetteringLine Bright, LetteringLine Dark, string BrightText, string DarkText)> Pairs(Examination photo)
    {
        if (LineTones.Unlike(photo.Advice.Measures.Tones) is var (bright, dark))
        {
            var (one, other) = (photo.Reading.Lines[bright.Line], photo.Reading.Lines[dark.Line]);
            yield return (one.Line, other.Line, one.Text, other.Text);
        }
    }

    /// <summary>The camera stands still, so a line lies within its own height.</summary>
    private static bool IsSame(LetteringLine one, LetteringLine other) => one.InPhoto.Centre.DistanceTo(other.InPhoto.Centre).Pixels <= other.InkHeight.Pixels;
}
