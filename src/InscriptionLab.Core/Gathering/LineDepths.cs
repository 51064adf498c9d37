using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.Reliefs;

namespace InscriptionLab.Gathering;

/// <summary>Compares how deep lines are cut. Lines of unlike depth are an observation that later cutting would explain, and so would wear, a change of pressure or of tool.</summary>
public static class LineDepths
{
    /// <summary>Letters from which a line's depth is told.</summary>
    private const int FewestLetters = 4;

    /// <summary>Share of a letter's box that counts as the floor of its grooves.</summary>
    private const double Floor = 0.1;

    /// <summary>How many times deeper one line must be than another to be worth a word (a choice: pressure of one hand varies by less within a signature).</summary>
    private const double Unlike = 1.6;

    /// <summary>Standard errors by which the depths must differ.</summary>
    private const double Sure = 3;

    /// <summary>Median deviations to standard deviation, for normal scatter.</summary>
    private const double Normal = 1.4826;

    /// <summary>Gives the depth of each line that has enough letters.</summary>
    /// <param name="reading">Lines with their boxes in a photo of the view.</param>
    /// <param name="relief">The form of the surface.</param>
    public static ImmutableArray<LineDepth> Of(Reading reading, SurfaceRelief relief)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(relief);
        return [.. reading.Lines.Select((line, index) =>
        {
            var depths = line.Letters.Where(letter => !letter.IsSpace && char.IsLetterOrDigit(letter.Character, 0)).Select(letter => Depth(letter, relief)).OfType<double>().ToList();
            if (depths.Count < FewestLetters)
            {
                return default;
            }

            var middle = Median.Of(depths);
            var scatter = Normal * Median.Of(depths.Select(depth => Math.Abs(depth - middle)));
            return new LineDepth(index, middle, scatter / Math.Sqrt(depths.Count), depths.Count);
        }).Where(depth => depth.Letters > 0)];
    }

    /// <summary>Gives the deepest and the shallowest line where their depths are surely unlike; null otherwise.</summary>
    public static (LineDepth Deep, LineDepth Shallow)? Unequal(IReadOnlyList<LineDepth> depths)
    {
        ArgumentNullException.ThrowIfNull(depths);
        if (depths.Count < 2)
        {
            return null;
        }

        var (deep, shallow) = (depths.MaxBy(depth => depth.Depth), depths.MinBy(depth => depth.Depth));
        var error = Math.Sqrt((deep.Uncertainty * deep.Uncertainty) + (shallow.Uncertainty * shallow.Uncertainty));
        return deep.Depth >= Unlike * shallow.Depth && deep.Depth - shallow.Depth >= Sure * error ? (deep, shallow) : null;
    }

    /// <summary>The floor of the grooves in a letter's box under the middle of the box.</summary>
    private static double? Depth(Letter letter, SurfaceRelief relief)
    {
        var corners = new[] { letter.InPhoto.TopLeft, letter.InPhoto.TopRight, letter.InPhoto.BottomRight, letter.InPhoto.BottomLeft }.Select(relief.Map.ToStrip).ToList();
        if (corners.Exists(corner => corner is null))
        {
            return null;
        }

        var (left, right) = ((int)corners.Min(corner => corner!.Value.X), (int)corners.Max(corner => corner!.Value.X));
        var (top, bottom) = ((int)corners.Min(corner => corner!.Value.Y), (int)corners.Max(corner => corner!.Value.Y));
        if (left < 0 || top < 0 || right >= relief.Height.Width || bottom >= relief.Height.Height || right - left < 3 || bottom - top < 3)
        {
            return null;
        }

        var heights = new List<float>();
        for (var y = top; y <= bottom; y++)
        {
            heights.AddRange(relief.Height.Values.Slice((y * relief.Height.Width) + left, right - left + 1));
        }

        heights.Sort();
        return heights[heights.Count / 2] - heights.Take(Math.Max(1, (int)(Floor * heights.Count))).Average();
    }
}
