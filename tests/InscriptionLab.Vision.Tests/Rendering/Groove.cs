using System;
using System.Collections.Generic;

namespace InscriptionLab.Vision.Tests.Rendering;

/// <summary>A straight groove cut into a tube, in millimetres along the axis and round the arc. Its cross-section is a squared cosine, so that slopes have an exact formula.</summary>
internal sealed record Groove(double FromAxial, double FromArc, double ToAxial, double ToArc, double HalfWidth, double Depth)
{
    /// <summary>Strokes of the letters that can be drawn with straight lines, on a grid one wide and one high, from the top left.</summary>
    private static readonly Dictionary<char, double[][]> Strokes = new()
    {
        ['H'] = [[0, 0, 0, 1], [1, 0, 1, 1], [0, 0.5, 1, 0.5]],
        ['E'] = [[0, 0, 0, 1], [0, 0, 1, 0], [0, 0.5, 0.8, 0.5], [0, 1, 1, 1]],
        ['L'] = [[0, 0, 0, 1], [0, 1, 1, 1]],
        ['I'] = [[0.5, 0, 0.5, 1]],
        ['T'] = [[0.5, 0, 0.5, 1], [0, 0, 1, 0]],
        ['F'] = [[0, 0, 0, 1], [0, 0, 1, 0], [0, 0.5, 0.8, 0.5]],
        ['N'] = [[0, 0, 0, 1], [1, 0, 1, 1], [0, 0, 1, 1]],
        ['A'] = [[0, 1, 0.5, 0], [0.5, 0, 1, 1], [0.2, 0.6, 0.8, 0.6]],
        ['Z'] = [[0, 0, 1, 0], [1, 0, 0, 1], [0, 1, 1, 1]],
    };

    /// <summary>Gives the grooves of a word along the tube, its middle at the given place.</summary>
    internal static List<Groove> Word(string word, double axial, double arc, double height, double halfWidth, double depth)
    {
        const double Wide = 0.6;
        const double Pitch = 0.95;
        var grooves = new List<Groove>();
        for (var i = 0; i < word.Length; i++)
        {
            var left = axial + ((i - (word.Length / 2.0)) * Pitch * height);
            foreach (var stroke in Strokes[word[i]])
            {
                grooves.Add(new Groove(
                    left + (stroke[0] * Wide * height), arc + ((stroke[1] - 0.5) * height), left + (stroke[2] * Wide * height), arc + ((stroke[3] - 0.5) * height), halfWidth, depth));
            }
        }

        return grooves;
    }

    /// <summary>Gives height (zero or below) and its slopes along the axis and the arc.</summary>
    internal (double Height, double Axial, double Arc) At(double axial, double arc)
    {
        if (Math.Abs(axial - ((FromAxial + ToAxial) / 2)) > HalfWidth + Math.Abs((ToAxial - FromAxial) / 2) || Math.Abs(arc - ((FromArc + ToArc) / 2)) > HalfWidth + Math.Abs((ToArc - FromArc) / 2))
        {
            return default;
        }

        var (dx, dy) = (ToAxial - FromAxial, ToArc - FromArc);
        var t = Math.Clamp((((axial - FromAxial) * dx) + ((arc - FromArc) * dy)) / ((dx * dx) + (dy * dy)), 0, 1);
        var (x, y) = (axial - FromAxial - (t * dx), arc - FromArc - (t * dy));
        var distance = Math.Sqrt((x * x) + (y * y));
        if (distance >= HalfWidth || distance == 0)
        {
            return distance == 0 ? (-Depth, 0, 0) : default;
        }

        var cosine = Math.Cos(Math.PI * distance / (2 * HalfWidth));
        var slope = Depth * Math.PI / (2 * HalfWidth) * Math.Sin(Math.PI * distance / HalfWidth);
        return (-Depth * cosine * cosine, slope * x / distance, slope * y / distance);
    }
}
