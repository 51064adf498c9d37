using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Imaging;

namespace InscriptionLab.Catalogue.Tests.Likeness;

/// <summary>
/// A pretended engraver: every letter is a few strokes, bent in this hand's own fixed way, with its slant, width, weight and serifs.
/// Each mark is cut again with a little unsteadiness and photographed under other light, so no two pictures are equal.
/// </summary>
internal sealed class Hand
{
    private const int Height = 64;
    private const double LetterHeight = 40;
    private const double Baseline = 52;
    private const double Left = 8;

    /// <summary>Letters as strokes through points on a grid of one letter, x to the right, y up from the foot.</summary>
    private static readonly Dictionary<char, double[][]> Skeletons = new()
    {
        ['A'] = [[0, 0, 0.5, 1, 1, 0], [0.2, 0.4, 0.8, 0.4]],
        ['B'] = [[0, 0, 0, 1, 0.7, 1, 0.8, 0.75, 0.6, 0.55, 0, 0.52], [0.6, 0.52, 0.9, 0.4, 0.9, 0.1, 0.6, 0, 0, 0]],
        ['C'] = [[0.95, 0.8, 0.6, 1, 0.2, 0.85, 0, 0.5, 0.2, 0.15, 0.6, 0, 0.95, 0.2]],
        ['D'] = [[0, 0, 0, 1, 0.5, 1, 0.9, 0.75, 0.95, 0.4, 0.7, 0.05, 0, 0]],
        ['E'] = [[0.8, 1, 0, 1, 0, 0, 0.85, 0], [0, 0.5, 0.6, 0.5]],
        ['H'] = [[0, 0, 0, 1], [0.9, 0, 0.9, 1], [0, 0.5, 0.9, 0.5]],
        ['I'] = [[0.2, 0, 0.2, 1]],
        ['K'] = [[0, 0, 0, 1], [0.85, 1, 0, 0.45], [0.3, 0.6, 0.9, 0]],
        ['L'] = [[0, 1, 0, 0, 0.8, 0]],
        ['N'] = [[0, 0, 0, 1, 0.9, 0, 0.9, 1]],
        ['O'] = [[0.5, 1, 0.15, 0.85, 0, 0.5, 0.15, 0.15, 0.5, 0, 0.85, 0.15, 1, 0.5, 0.85, 0.85, 0.5, 1]],
        ['R'] = [[0, 0, 0, 1, 0.7, 1, 0.85, 0.75, 0.65, 0.52, 0, 0.5], [0.45, 0.5, 0.95, 0]],
        ['S'] = [[0.85, 0.85, 0.5, 1, 0.15, 0.85, 0.2, 0.6, 0.75, 0.42, 0.9, 0.2, 0.5, 0, 0.05, 0.15]],
        ['T'] = [[0, 1, 1, 1], [0.5, 1, 0.5, 0]],
        ['W'] = [[0, 1, 0.25, 0, 0.5, 0.8, 0.75, 0, 1, 1]],
    };

    private readonly Dictionary<char, double[][]> _letters;
    private readonly double _slant;
    private readonly double _width;
    private readonly double _spacing;
    private readonly double _weight;
    private readonly double _serif;

    internal Hand(int seed)
    {
        var random = new Random(seed);
        _slant = Spread(random, 0.12);
        _width = 24 + Spread(random, 4);
        _spacing = 9 + Spread(random, 2);
        _weight = 2.2 + Spread(random, 0.7);
        _serif = random.NextDouble() < 0.5 ? 0 : 2 + (random.NextDouble() * 4);
        _letters = Skeletons.ToDictionary(pair => pair.Key, pair => pair.Value.Select(stroke => stroke.Select(value => value + Spread(random, 0.07)).ToArray()).ToArray());
    }

    /// <summary>Gets the letters that can be cut.</summary>
    internal static string Letters => string.Concat(Skeletons.Keys);

    /// <summary>Cuts a word and photographs it.</summary>
    internal GrayImage Cut(string word, int occasion)
    {
        var random = new Random((occasion * 7919) + 77);
        var width = (int)((2 * Left) + (word.Length * (_width + _spacing)));
        var depth = new float[width * Height];
        var turn = Spread(random, 0.015);
        for (var index = 0; index < word.Length; index++)
        {
            var at = Left + (index * (_width + _spacing)) + Spread(random, 0.8);
            foreach (var stroke in _letters[word[index]])
            {
                Draw(depth, width, stroke, at, turn, random);
            }
        }

        return Photographed(depth, width, random);
    }

    private void Draw(float[] depth, int width, double[] stroke, double at, double turn, Random random)
    {
        var points = new List<(double X, double Y)>();
        for (var index = 0; index < stroke.Length; index += 2)
        {
            var (x, y) = (stroke[index] * _width, stroke[index + 1] * LetterHeight);
            var across = at + x + (_slant * y) + Spread(random, 0.5);
            points.Add((across, Baseline - y + (turn * across) + Spread(random, 0.5)));
        }

        for (var index = 0; index + 1 < points.Count; index++)
        {
            Line(depth, width, points[index], points[index + 1]);
        }

        foreach (var end in (ReadOnlySpan<(double X, double Y)>)[points[0], points[^1]])
        {
            if (_serif > 0)
            {
                Line(depth, width, (end.X - _serif, end.Y), (end.X + _serif, end.Y));
            }
        }
    }

    private void Line(float[] depth, int width, (double X, double Y) from, (double X, double Y) to)
    {
        var steps = (int)Math.Ceiling(Math.Max(Math.Abs(to.X - from.X), Math.Abs(to.Y - from.Y)) * 2) + 1;
        for (var step = 0; step <= steps; step++)
        {
            var (x, y) = (from.X + ((to.X - from.X) * step / steps), from.Y + ((to.Y - from.Y) * step / steps));
            for (var row = Math.Max(0, (int)(y - 4)); row <= Math.Min(Height - 1, (int)(y + 4)); row++)
            {
                for (var column = Math.Max(0, (int)(x - 4)); column <= Math.Min(width - 1, (int)(x + 4)); column++)
                {
                    var distance = Math.Sqrt(((column - x) * (column - x)) + ((row - y) * (row - y)));
                    var cut = (float)Math.Clamp((_weight / 2) + 0.5 - distance, 0, 1);
                    depth[(row * width) + column] = Math.Max(depth[(row * width) + column], cut);
                }
            }
        }
    }

    /// <summary>Dark wax or bright groove, a gradient of light, noise, and blur.</summary>
    private static GrayImage Photographed(float[] depth, int width, Random random)
    {
        var (ground, cut) = random.NextDouble() < 0.7 ? (150.0, -70.0) : (110.0, 80.0);
        var (slopeX, slopeY) = (Spread(random, 50), Spread(random, 30));
        var pixels = new byte[depth.Length];
        for (var row = 0; row < Height; row++)
        {
            for (var column = 0; column < width; column++)
            {
                double soft = 0;
                for (var offset = -1; offset <= 1; offset++)
                {
                    soft += depth[(Math.Clamp(row + offset, 0, Height - 1) * width) + column] + depth[(row * width) + Math.Clamp(column + offset, 0, width - 1)];
                }

                var light = ground + (slopeX * (((double)column / width) - 0.5)) + (slopeY * (((double)row / Height) - 0.5));
                pixels[(row * width) + column] = (byte)Math.Clamp(light + (cut * soft / 6) + Spread(random, 14), 0, 255);
            }
        }

        return new GrayImage(width, Height, pixels);
    }

    private static double Spread(Random random, double width) => ((random.NextDouble() + random.NextDouble()) - 1) * width;
}
