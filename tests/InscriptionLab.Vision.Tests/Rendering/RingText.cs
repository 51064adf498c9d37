using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Tests.Rendering;

/// <summary>One text that runs round a flat ring.</summary>
/// <param name="Text">The text.</param>
/// <param name="Font">File of the typeface.</param>
/// <param name="XHeight">Height of a lower-case x in outer radii.</param>
/// <param name="Middle">Angle of its middle, radians, clockwise as seen.</param>
/// <param name="TopsOutward">Whether its tops point away from the centre.</param>
internal sealed record RingText(string Text, string Font, double XHeight, double Middle, bool TopsOutward)
{
    private readonly TrueTypeFont _font = TrueTypeFont.Of(Font);

    /// <summary>Gets how far the tops lean to the right, as a share of the height: an italic of a kind.</summary>
    public double Slant { get; init; }

    /// <summary>Gets room added between letters, in x-heights.</summary>
    public double Spacing { get; init; }

    private double Em => XHeight / _font.Outlines('x').SelectMany(outline => outline).Max(point => point.Y);

    /// <summary>Gives each letter's outlines in the ring's plane and its box there as radius and angle: top-left, top-right, bottom-right, bottom-left.</summary>
    /// <param name="middleRadius">Radius about which the letters of x-height are centred.</param>
    internal IEnumerable<(char Letter, List<PixelPoint[]> Outlines, (double Radius, double Around)[] Box)> Letters(double middleRadius)
    {
        var (em, gap) = (Em, Spacing * XHeight);
        var length = Text.Sum(letter => (_font.Advance(letter) * em) + gap) - gap;
        var along = -length / 2;
        foreach (var letter in Text)
        {
            var outlines = _font.Outlines(letter);
            if (letter != ' ')
            {
                (double Radius, double Around) Place(double x, double y)
                {
                    var up = (y * em) - (XHeight / 2);
                    var turn = (along + ((x + (Slant * y)) * em)) / middleRadius;
                    return TopsOutward ? (middleRadius + up, Middle + turn) : (middleRadius - up, Middle - turn);
                }

                var points = outlines.SelectMany(outline => outline).Select(point => (X: point.X + (Slant * point.Y), point.Y)).ToList();
                var (left, right, bottom, top) = (points.Min(p => p.X), points.Max(p => p.X), points.Min(p => p.Y), points.Max(p => p.Y));
                (double Radius, double Around) Corner(double x, double y) => Place(x - (Slant * y), y);
                yield return (
                    letter,
                    [.. outlines.Select(outline => Array.ConvertAll(outline, point => Flat(Place(point.X, point.Y))))],
                    [Corner(left, top), Corner(right, top), Corner(right, bottom), Corner(left, bottom)]);
            }

            along += (_font.Advance(letter) * em) + gap;
        }
    }

    private static PixelPoint Flat((double Radius, double Around) at) => new(at.Radius * Math.Cos(at.Around), at.Radius * Math.Sin(at.Around));
}
