using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Advice;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Readings;

namespace InscriptionLab.Vision.Light;

/// <summary>Looks letter by letter where the photo is burnt out.</summary>
internal static class BurntMeter
{
    /// <summary>Levels, and how little they vary over a cell, that show nothing: cameras bend their curve before 255, so burnt-out metal may lie at 245 throughout.</summary>
    private const int Bright = 235;
    private const int Range = 25;

    /// <summary>Share of a letter's box from which on the letter counts as burnt out. White paint in grooves fills up to 0.67 of it (an I; rendered photos).</summary>
    private const double LeastShare = 0.75;

    /// <summary>Cells along each side of a box, and samples along each side of a cell.</summary>
    private const int Cells = 8;
    private const int Samples = 3;

    /// <summary>Gives the burnt places of all lines.</summary>
    internal static IEnumerable<BurntPlace> Of(GrayImage photo, Readings.Reading reading) => reading.Lines.SelectMany((line, index) => Parts(line)
        .Select(part => new BurntPlace(index, part.Letter, part.Part, Share(photo, part.Box))).Where(place => place.Share >= LeastShare));

    private static IEnumerable<(int Letter, BurntPart Part, Quad Box)> Parts(LineReading line)
    {
        var boxes = line.Letters.Select((letter, index) => (letter, index)).Where(item => item.letter.InPhoto != default).ToList();
        foreach (var (letter, index) in boxes)
        {
            yield return (index, letter.IsSpace ? BurntPart.Gap : BurntPart.Letter, letter.InPhoto);
        }

        var ink = boxes.FindAll(item => !item.letter.IsSpace);
        if (ink.Count > 0)
        {
            var (first, last) = (ink[0], ink[^1]);
            var (a, b) = (first.letter.InPhoto, last.letter.InPhoto);
            yield return (first.index, BurntPart.Before, new Quad(Beyond(a.TopRight, a.TopLeft, a), a.TopLeft, a.BottomLeft, Beyond(a.BottomRight, a.BottomLeft, a)));
            yield return (last.index, BurntPart.Behind, new Quad(b.TopRight, Beyond(b.TopLeft, b.TopRight, b), Beyond(b.BottomLeft, b.BottomRight, b), b.BottomRight));
        }
    }

    /// <summary>The point half a letter's height beyond one corner, as seen from another.</summary>
    private static PixelPoint Beyond(PixelPoint from, PixelPoint corner, Quad letter)
    {
        var reach = letter.TopLeft.DistanceTo(letter.BottomLeft).Pixels / 2;
        var length = Math.Max(1e-6, from.DistanceTo(corner).Pixels);
        return new PixelPoint(corner.X + (reach * (corner.X - from.X) / length), corner.Y + (reach * (corner.Y - from.Y) / length));
    }

    /// <summary>Share of a box that is burnt out; what lies outside the photo does not count.</summary>
    private static double Share(GrayImage photo, Quad box)
    {
        var burnt = 0;
        var seen = 0;
        for (var cell = 0; cell < Cells * Cells; cell++)
        {
            var levels = Levels(photo, box, cell % Cells, cell / Cells).ToList();
            if (levels.Count > 0)
            {
                burnt += levels.Min() >= Bright && levels.Max() - levels.Min() < Range ? 1 : 0;
                seen++;
            }
        }

        return (double)burnt / Math.Max(1, seen);
    }

    private static IEnumerable<byte> Levels(GrayImage photo, Quad box, int column, int row)
    {
        for (var i = 0; i < Samples * Samples; i++)
        {
            var (u, v) = ((column + (((i % Samples) + 0.5) / Samples)) / Cells, (row + (((i / Samples) + 0.5) / Samples)) / Cells);
            double Between(double topLeft, double topRight, double bottomRight, double bottomLeft) => ((1 - v) * (((1 - u) * topLeft) + (u * topRight))) + (v * (((1 - u) * bottomLeft) + (u * bottomRight)));
            var x = (int)Math.Round(Between(box.TopLeft.X, box.TopRight.X, box.BottomRight.X, box.BottomLeft.X));
            var y = (int)Math.Round(Between(box.TopLeft.Y, box.TopRight.Y, box.BottomRight.Y, box.BottomLeft.Y));
            if (x >= 0 && y >= 0 && x < photo.Width && y < photo.Height)
            {
                yield return photo[x, y];
            }
        }
    }
}
