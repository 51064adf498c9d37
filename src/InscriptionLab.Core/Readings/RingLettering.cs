using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Strips;

namespace InscriptionLab.Readings;

/// <summary>Lettering that runs round a flat ring: where it begins, which way its tops point, and whether it reads better from the ring laid flat.</summary>
public static class RingLettering
{
    /// <summary>Share of the radius by which letters may stand out of the face: rims and openings are found a little off.</summary>
    private const double Beside = 0.06;

    /// <summary>Height of a letter as a share of the rim's size from which it is none, but the ring or its opening.</summary>
    private const double LargestLetter = 0.5;

    /// <summary>Probability from which a letter is sure.</summary>
    private const double Sure = 0.75;

    /// <summary>Sure letters without which a ring is not lettered: turning marks and scratches pass for a letter or two.</summary>
    private const int FewestSure = 3;

    /// <summary>Gives where a ring is to be cut open: in the middle of the widest part without letters, so that no text is cut; the letters decide by majority which way is up.</summary>
    /// <param name="reading">What was read on a strip of one turn or more.</param>
    /// <param name="map">That strip's map.</param>
    /// <returns>The cut for a strip of exactly one turn; null where nothing was read.</returns>
    public static RingCut? Cut(Reading reading, RingStripMap map)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(map);
        var letters = Ink(reading.Lines).ToList();
        if (letters.Count == 0)
        {
            return null;
        }

        var taken = letters.Select(letter => Arc(letter.InPhoto, map.Plane)).OrderBy(arc => arc.From).ToList();
        var (start, widest) = (0.0, -1.0);
        for (var (i, reach) = (0, taken.Max(arc => arc.To) - (2 * Math.PI)); i < taken.Count; i++)
        {
            if (taken[i].From - reach > widest)
            {
                (start, widest) = ((taken[i].From + reach) / 2, taken[i].From - reach);
            }

            reach = Math.Max(reach, taken[i].To);
        }

        var outward = reading.Lines.Sum(line => TopsOutward(line, map) ? line.Letters.Length : -line.Letters.Length) >= 0;
        return new RingCut(Angle.FromRadians(Math.IEEERemainder(start, 2 * Math.PI)), outward, default);
    }

    /// <summary>Gets the lines that run round the ring, each with whether its tops point away from the centre.</summary>
    /// <param name="reading">The reading, which may hold lettering beside the ring.</param>
    /// <param name="map">The map of the ring laid flat.</param>
    public static IReadOnlyList<(LineReading Line, bool TopsOutward)> Lines(Reading reading, RingStripMap map)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(map);
        return [.. reading.Lines.Where(line => LiesOn(line, map.Plane)).Select(line => (line, TopsOutward(line, map)))];
    }

    /// <summary>Joins what was read on the ring laid flat with what was read otherwise: on the face of the ring the clearer of both counts as a whole, lettering beside it is kept.</summary>
    /// <param name="onRing">Reading of the ring laid flat.</param>
    /// <param name="other">Reading of the photo as it lies, or of a tube.</param>
    /// <param name="plane">The ring.</param>
    /// <returns>The joint reading; <paramref name="other"/> itself where the ring laid flat shows no more.</returns>
    public static Reading Union(Reading onRing, Reading other, RingPlane plane)
    {
        ArgumentNullException.ThrowIfNull(onRing);
        ArgumentNullException.ThrowIfNull(other);
        ArgumentNullException.ThrowIfNull(plane);
        if (Ink(onRing.Lines).Count(letter => letter.Probability.Value >= Sure) < FewestSure)
        {
            return other;
        }

        var rivals = other.Lines.Where(line => LiesOn(line, plane)).ToList();
        if (ReadingUnion.Clarity(onRing.Lines) <= ClarityOnce(rivals))
        {
            return other;
        }

        // A photo is a mirror image or it is not: what disagrees with the ring was misread.
        var mirrored = onRing.Lines[0].Line.Direction.Mirrored;
        return onRing with { Lines = [.. onRing.Lines, .. other.Lines.Where(line => !rivals.Contains(line) && !IsRingItself(line, plane) && line.Line.Direction.Mirrored == mirrored)] };
    }

    /// <summary>How clearly lines were read that may show one letter twice: each place counts once, as it was read best.</summary>
    private static double ClarityOnce(IEnumerable<LineReading> lines)
    {
        var counted = new List<Letter>();
        foreach (var letter in Ink(lines).OrderByDescending(letter => letter.Probability.Value))
        {
            if (!counted.Exists(other => ReadingUnion.Holds(other.InPhoto, letter.InPhoto.Centre)))
            {
                counted.Add(letter);
            }
        }

        return counted.Sum(ReadingUnion.Clarity);
    }

    /// <summary>Tells whether a ring was taken for a letter: an O as large as its opening.</summary>
    private static bool IsRingItself(LineReading line, RingPlane plane) => Ink([line]).Any(letter =>
        letter.InPhoto.TopLeft.DistanceTo(letter.InPhoto.BottomLeft) > plane.Outer.SemiMinor * LargestLetter && plane.ToPlane(letter.InPhoto.Centre) is { Radius: < 1 });

    /// <summary>The letters' own boxes tell, whatever they were read from.</summary>
    private static bool TopsOutward(LineReading line, RingStripMap map) => Ink([line]).Sum(letter =>
        (map.Plane.ToPlane(Between(letter.InPhoto.TopLeft, letter.InPhoto.TopRight))?.Radius ?? 0) - (map.Plane.ToPlane(Between(letter.InPhoto.BottomLeft, letter.InPhoto.BottomRight))?.Radius ?? 0)) >= 0;

    private static PixelPoint Between(PixelPoint one, PixelPoint other) => new((one.X + other.X) / 2, (one.Y + other.Y) / 2);

    private static IEnumerable<Letter> Ink(IEnumerable<LineReading> lines) => lines.SelectMany(line => line.Letters).Where(letter => !letter.IsSpace);

    private static bool LiesOn(LineReading line, RingPlane plane)
    {
        var centres = Ink([line]).Select(letter => plane.ToPlane(letter.InPhoto.Centre)?.Radius ?? double.PositiveInfinity).ToList();
        return 2 * centres.Count(radius => radius >= plane.InnerRadius - Beside && radius <= 1 + Beside) > centres.Count;
    }

    /// <summary>The arc that a letter takes, from the angle of its middle; To may lie beyond a full turn.</summary>
    private static (double From, double To) Arc(Quad box, RingPlane plane)
    {
        double Around(PixelPoint point) => plane.ToPlane(point)?.Around.Radians ?? 0;
        var middle = Around(box.Centre);
        var offsets = new[] { box.TopLeft, box.TopRight, box.BottomRight, box.BottomLeft }.Select(corner => Math.IEEERemainder(Around(corner) - middle, 2 * Math.PI)).ToList();
        return (middle + offsets.Min(), middle + offsets.Max());
    }
}
