using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Lines;
using InscriptionLab.Measures;

namespace InscriptionLab.Readings;

/// <summary>
/// Joins two readings of one photo, one from the unrolled strip and one from the photo as it lies: lettering that only one of them shows is kept,
/// and a line that both show is taken from the one in which its letters stand out more clearly. Letters are never mixed within a line.
/// </summary>
public static class ReadingUnion
{
    /// <summary>A letter at this probability speaks neither for nor against the view it was read in.</summary>
    private const double Indifferent = 0.5;

    /// <summary>Joins the readings.</summary>
    /// <param name="unrolled">Reading of the unrolled strip; preferred where both are as clear.</param>
    /// <param name="flat">Reading of the photo as it lies.</param>
    /// <returns>The joint reading, lines in the reader's order; its style is that of the reading that gave more letters.</returns>
    public static Reading Of(Reading unrolled, Reading flat)
    {
        ArgumentNullException.ThrowIfNull(unrolled);
        ArgumentNullException.ThrowIfNull(flat);
        if (flat.Lines.IsEmpty)
        {
            return unrolled;
        }

        if (unrolled.Lines.IsEmpty)
        {
            return flat;
        }

        var kept = new List<LineReading>(unrolled.Lines);
        var fromFlat = 0;
        foreach (var line in flat.Lines)
        {
            var same = kept.Where(other => SamePlace(other.Line, line.Line)).ToList();
            if (Clarity(same) >= Clarity([line]))
            {
                continue;
            }

            kept.RemoveAll(same.Contains);
            kept.Add(line);
            fromFlat++;
        }

        return fromFlat == 0 ? unrolled : new Reading(unrolled.Reader, ReadingOrder.Of(kept, line => line.Line.InPhoto), 2 * fromFlat > kept.Count ? flat.Style : unrolled.Style);
    }

    /// <summary>How clearly lines were read: their letters' probabilities above the indifferent one, summed.</summary>
    internal static double Clarity(IEnumerable<LineReading> lines) =>
        lines.SelectMany(line => line.Letters).Where(letter => !letter.IsSpace).Sum(Clarity);

    /// <summary>How clearly one letter was read.</summary>
    internal static double Clarity(Letter letter) => letter.Probability.Value - Indifferent;

    private static bool SamePlace(LetteringLine one, LetteringLine other) => Holds(one.InPhoto, other.InPhoto.Centre) || Holds(other.InPhoto, one.InPhoto.Centre);

    /// <summary>Tells whether a point lies in a convex quad, whichever way its corners run.</summary>
    internal static bool Holds(Quad quad, PixelPoint point)
    {
        ReadOnlySpan<PixelPoint> corners = [quad.TopLeft, quad.TopRight, quad.BottomRight, quad.BottomLeft];
        var (left, right) = (false, false);
        for (var i = 0; i < corners.Length; i++)
        {
            var (from, to) = (corners[i], corners[(i + 1) % corners.Length]);
            var side = ((to.X - from.X) * (point.Y - from.Y)) - ((to.Y - from.Y) * (point.X - from.X));
            left |= side > 0;
            right |= side < 0;
        }

        return !(left && right);
    }
}
