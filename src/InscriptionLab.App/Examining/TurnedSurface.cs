using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Gathering;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;

namespace InscriptionLab.App.Examining;

/// <summary>What was read on a strip that several photos were joined to, handed to the photos that show it best.</summary>
internal static class TurnedSurface
{
    /// <summary>Letters and mean probability from which a line of the strip counts.</summary>
    private const int FewestLetters = 3;
    private const double ClearFrom = 0.85;

    /// <summary>Gives one reading a view: the lines that this view shows best, with their boxes in its photo. A line that the strip shows twice, past a full turn, is kept where it reads more surely.</summary>
    /// <param name="reading">What was read on the strip; boxes in strip pixels.</param>
    /// <param name="mosaic">The strip.</param>
    /// <param name="tubes">The tube in each photo of the set.</param>
    internal static ImmutableArray<GatheredPhoto> Views(Reading reading, TurnMosaic mosaic, ImmutableArray<Tube> tubes)
    {
        var turn = 2 * Math.PI * mosaic.PixelsPerRadius;
        bool IsShownTwice(LineReading line) => reading.Lines.Any(other => !ReferenceEquals(line, other)
            && Math.Abs(line.Line.InPhoto.Centre.X - other.Line.InPhoto.Centre.X) < line.Line.InPhoto.TopLeft.DistanceTo(line.Line.InPhoto.TopRight).Pixels / 2
            && Math.Abs(Math.Abs(line.Line.InPhoto.Centre.Y - other.Line.InPhoto.Centre.Y) - turn) < line.Line.InkHeight.Pixels
            && (Sure(other), -other.Line.InPhoto.Centre.Y).CompareTo((Sure(line), -line.Line.InPhoto.Centre.Y)) > 0);
        var lines = reading.Lines.Where(line => IsClear(line) && !IsShownTwice(line)).Select(line => (Line: line, View: mosaic.BestView(Places(line)))).ToList();
        return [.. mosaic.Views.Select(view => new GatheredPhoto(
            tubes[view.PhotoIndex],
            reading with { Lines = [.. lines.Where(line => ReferenceEquals(line.View, view)).Select(line => StripLines.InPhoto(line.Line, view.Map))] }))];
    }

    /// <summary>At seams light and shade may look like a letter or two: only what reads clearly speaks beside the single photos.</summary>
    private static bool IsClear(LineReading line)
    {
        var ink = line.Letters.Where(letter => !letter.IsSpace).ToList();
        return ink.Count >= FewestLetters && ink.All(letter => letter.Character != Letter.Unreadable) && ink.Average(letter => letter.Probability.Value) >= ClearFrom;
    }

    private static double Sure(LineReading line) => line.Letters.Sum(letter => letter.Probability.Value);

    private static ImmutableArray<PixelPoint> Places(LineReading line) => [.. line.Letters.Select(letter => letter.InPhoto.Centre)];
}
