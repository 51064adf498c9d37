using System;
using InscriptionLab.Imaging;

namespace InscriptionLab.Likeness;

/// <summary>
/// Turns the picture of a line of lettering into a vector of signed bytes: marks cut alike lie near each other. The first part says where
/// along the line strokes of which direction lie (histograms of oriented gradients, Dalal and Triggs, CVPR 2005); the second, which
/// directions meet at a stroke's edge wherever it lies (after the hinge features of Bulacu and Schomaker, IEEE PAMI 29, 2007), which
/// depends on the hand and less on the words.
/// </summary>
public sealed class MarkEmbedder
{
    /// <summary>Changes when the numbers of an embedding change their meaning.</summary>
    public const string Version = "strokes-1";

    /// <summary>How far from an edge point its partner lies, in pixels of the normalised line: about the width of a stroke.</summary>
    private const int HingeReach = 5;

    /// <summary>Largest value of a signed byte; the vector is scaled to length 127 times the square root of a 32nd of its size, so that single numbers are rarely cut off.</summary>
    private const double Full = 127;

    private readonly MarkEmbedderOptions _options;

    /// <summary>Makes the embedder.</summary>
    public MarkEmbedder(MarkEmbedderOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        _options = options;
    }

    /// <summary>Gets the number of bytes of an embedding.</summary>
    public int Dimensions => PlaceDimensions + (_options.Directions * _options.Directions * _options.Bands / 2);

    private int PlaceDimensions => _options.Stretches * _options.Bands * _options.Directions;

    /// <summary>Embeds one line.</summary>
    /// <param name="picture">The line, upright and laid flat.</param>
    /// <returns>Signed bytes of about equal length as a vector; compare by <see cref="MarkIndex"/>.</returns>
    public sbyte[] Embed(GrayImage picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        var height = _options.Height;
        var width = Math.Clamp((int)Math.Round((double)picture.Width * height / picture.Height), height, _options.MostWidth);
        var gradients = new StrokeField(PictureScaler.ToGrid(picture, width, height), width, height, _options.Directions);
        var places = new double[PlaceDimensions];
        var hinges = new double[Dimensions - PlaceDimensions];
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                AddPlace(places, gradients, x, y);
                AddHinge(hinges, gradients, x, y);
            }
        }

        Level(places, _options.Directions * _options.Bands);
        Level(hinges, hinges.Length);
        return Packed(places, hinges);
    }

    private void AddPlace(double[] places, StrokeField field, int x, int y)
    {
        var strength = field.Strength(x, y);
        if (strength <= 0)
        {
            return;
        }

        // Shared between the two nearest stretches, so that a shift of a pixel changes little.
        var along = ((x + 0.5) * _options.Stretches / field.Width) - 0.5;
        var first = (int)Math.Floor(along);
        var share = along - first;
        var band = y * _options.Bands / field.Height;
        var (near, far, turn) = field.Direction(x, y);
        for (var step = 0; step < 2; step++)
        {
            var stretch = first + step;
            if (stretch >= 0 && stretch < _options.Stretches)
            {
                var weight = strength * (step == 0 ? 1 - share : share);
                var start = ((stretch * _options.Bands) + band) * _options.Directions;
                places[start + near] += weight * (1 - turn);
                places[start + far] += weight * turn;
            }
        }
    }

    private void AddHinge(double[] hinges, StrokeField field, int x, int y)
    {
        var strength = field.Strength(x, y);
        if (strength <= 0 || x + HingeReach >= field.Width || y + HingeReach >= field.Height)
        {
            return;
        }

        var halves = _options.Bands / 2;
        var half = y * halves / field.Height;
        var here = field.Direction(x, y).Near;
        foreach (var (partnerX, partnerY) in (ReadOnlySpan<(int, int)>)[(x + HingeReach, y), (x, y + HingeReach)])
        {
            var weight = Math.Min(strength, field.Strength(partnerX, partnerY));
            hinges[(((half * _options.Directions) + here) * _options.Directions) + field.Direction(partnerX, partnerY).Near] += weight;
        }
    }

    /// <summary>Takes square roots (the Hellinger kernel: frequent directions count less) and brings each block to length 1.</summary>
    private static void Level(double[] values, int block)
    {
        for (var start = 0; start < values.Length; start += block)
        {
            var part = values.AsSpan(start, block);
            double sum = 0;
            foreach (var value in part)
            {
                sum += value;
            }

            for (var index = 0; index < part.Length; index++)
            {
                part[index] = sum > 0 ? Math.Sqrt(part[index] / sum) : 0;
            }
        }
    }

    private sbyte[] Packed(double[] places, double[] hinges)
    {
        // The mean is taken off each part: what all marks share says nothing.
        Centre(places);
        Centre(hinges);
        var length = Math.Sqrt(Dot(places)) + 1e-12;
        var hingeLength = Math.Sqrt(Dot(hinges)) + 1e-12;
        var packed = new sbyte[Dimensions];
        var scale = Full * Math.Sqrt(Dimensions / 32.0) / Math.Sqrt(2);
        for (var index = 0; index < packed.Length; index++)
        {
            var value = index < places.Length ? places[index] / length : hinges[index - places.Length] / hingeLength;
            packed[index] = (sbyte)Math.Clamp(Math.Round(value * scale), -Full, Full);
        }

        return packed;
    }

    private static void Centre(double[] values)
    {
        double mean = 0;
        foreach (var value in values)
        {
            mean += value / values.Length;
        }

        for (var index = 0; index < values.Length; index++)
        {
            values[index] -= mean;
        }
    }

    private static double Dot(double[] values)
    {
        double sum = 0;
        foreach (var value in values)
        {
            sum += value * value;
        }

        return sum;
    }
}
