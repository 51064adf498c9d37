using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Tubes;

/// <summary>
/// Measures a silhouette to a fraction of a pixel: the photo is straightened along the coarse line, piece after piece is averaged along it,
/// the edge of each piece is where its response to a derivative of a Gaussian is largest, and a straight line goes through the pieces, outliers left out.
/// </summary>
internal static class OutlineRefiner
{
    /// <summary>Pieces along the line.</summary>
    private const int Pieces = 40;

    /// <summary>Samples along a piece at most.</summary>
    private const int SamplesPerPiece = 24;

    /// <summary>Samples per pixel across the line.</summary>
    private const int Fineness = 2;

    /// <summary>Share of the largest response at which the blur is read off: a filter as wide as the edge's own blur answers with 1 / sqrt 2.</summary>
    private const double MatchedShare = 0.7;

    /// <summary>Response of a piece, as a share of the median piece's, below which it is not used.</summary>
    private const double WeakPiece = 0.2;

    /// <summary>Smallest distance from the line, in pixels, at which a piece is an outlier; wider for blurred edges.</summary>
    private const double SmallestTolerance = 0.75;

    private static readonly double[] Widths = [0.8, 1.2, 1.8, 2.7, 4, 6, 9, 13];

    /// <summary>Refines a coarse line.</summary>
    /// <param name="picture">The photo in light.</param>
    /// <param name="coarse">The coarse line, photo pixels.</param>
    /// <param name="reach">How far from the coarse line the edge may lie, pixels.</param>
    /// <returns>The refined line, or null where no straight edge is found.</returns>
    internal static RefinedOutline? Refine(LinearLight picture, PixelSegment coarse, double reach)
    {
        RefinedOutline? refined = null;
        var line = coarse;
        foreach (var within in new[] { reach, reach / 2, Math.Max(reach / 4, Fineness) })
        {
            refined = Once(picture, line, within);
            if (refined is null)
            {
                return null;
            }

            line = refined.Line;
        }

        return refined;
    }

    private static RefinedOutline? Once(LinearLight picture, PixelSegment line, double reach)
    {
        var length = line.Length.Pixels;
        if (!(length > Pieces))
        {
            return null;
        }

        var straightened = Straighten(picture, line, reach + (3 * Widths[^1]), out var middles);
        var widthIndex = MatchedWidth(straightened, reach);
        var kernel = Kernel(Widths[widthIndex]);
        var points = new List<(double Along, double Across, double Weight)>();
        for (var piece = 0; piece < Pieces; piece++)
        {
            if (straightened[piece] is { } profile && Peak(profile, kernel, reach) is { } peak)
            {
                points.Add((middles[piece], peak.Position, peak.Response));
            }
        }

        if (points.Count < Pieces / 4)
        {
            return null;
        }

        var weak = WeakPiece * Median.Of(points.Select(point => point.Weight));
        var used = points.Where(point => point.Weight >= weak).ToList();
        var tolerance = Math.Max(SmallestTolerance, Widths[widthIndex] / 2);
        var fit = RobustLine.Fit(used, tolerance);
        var ux = (line.End.X - line.Start.X) / length;
        var uy = (line.End.Y - line.Start.Y) / length;
        PixelPoint At(double along)
        {
            var across = fit.Offset + (fit.Slope * along);
            return new PixelPoint(line.Start.X + (ux * along) - (uy * across), line.Start.Y + (uy * along) + (ux * across));
        }

        return new RefinedOutline(new PixelSegment(At(0), At(length)), (double)fit.Inliers / Pieces);
    }

    /// <summary>Averages the photo along pieces of a line: for each piece a profile across it, three colours a sample, or null where it leaves the photo.</summary>
    private static float[]?[] Straighten(LinearLight picture, PixelSegment line, double reach, out double[] middles)
    {
        var length = line.Length.Pixels;
        var along = ((line.End.X - line.Start.X) / length, (line.End.Y - line.Start.Y) / length);
        var half = (int)Math.Ceiling(reach * Fineness);
        var samples = (int)Math.Clamp(length / Pieces, 4, SamplesPerPiece);
        middles = new double[Pieces];
        var profiles = new float[]?[Pieces];
        for (var piece = 0; piece < Pieces; piece++)
        {
            var places = new double[samples];
            for (var sample = 0; sample < samples; sample++)
            {
                places[sample] = length * ((piece * samples) + sample + 0.5) / (Pieces * samples);
            }

            middles[piece] = places.Average();
            profiles[piece] = Profile(picture, line.Start, along, places, half);
        }

        return profiles;
    }

    private static float[]? Profile(LinearLight picture, PixelPoint start, (double X, double Y) along, double[] places, int half)
    {
        var rows = (2 * half) + 1;
        var profile = new float[rows * 3];
        for (var row = 0; row < rows; row++)
        {
            var across = (row - half) / (double)Fineness;
            var colour = profile.AsSpan(row * 3, 3);
            var count = 0;
            foreach (var place in places)
            {
                count += picture.AddTo(start.X + (along.X * place) - (along.Y * across), start.Y + (along.Y * place) + (along.X * across), colour) ? 1 : 0;
            }

            for (var channel = 0; channel < 3; channel++)
            {
                colour[channel] = count == 0 ? float.NaN : colour[channel] / count;
            }
        }

        return float.IsNaN(profile[rows / 2 * 3]) ? null : profile;
    }

    /// <summary>The filter width that matches the edge's blur, judged on all pieces together.</summary>
    private static int MatchedWidth(float[]?[] pieces, double reach)
    {
        var responses = new double[Widths.Length];
        for (var i = 0; i < Widths.Length; i++)
        {
            var kernel = Kernel(Widths[i]);
            var peaks = pieces.Where(piece => piece is not null).Select(piece => Peak(piece!, kernel, reach)?.Response ?? 0).Order().ToArray();
            responses[i] = peaks.Length == 0 ? 0 : peaks[peaks.Length / 2];
        }

        var largest = responses.Max();
        return Array.FindIndex(responses, response => response >= MatchedShare * largest);
    }

    /// <summary>A derivative of a Gaussian, scaled so that a sharp step of height 1 answers with 1.</summary>
    private static double[] Kernel(double width)
    {
        var half = (int)Math.Ceiling(3 * width * Fineness);
        var kernel = new double[(2 * half) + 1];
        for (var i = -half; i <= half; i++)
        {
            var x = i / (width * Fineness);
            kernel[i + half] = x * Math.Exp(-x * x / 2) / (width * Fineness);
        }

        return kernel;
    }

    /// <summary>The largest response within reach of the middle, between samples by a parabola.</summary>
    private static (double Position, double Response)? Peak(float[] profile, double[] kernel, double reach)
    {
        var rows = profile.Length / 3;
        var middle = rows / 2;
        var within = (int)Math.Round(reach * Fineness);
        var half = kernel.Length / 2;
        var responses = new double[(2 * within) + 3];
        for (var i = -within - 1; i <= within + 1; i++)
        {
            double red = 0;
            double green = 0;
            double blue = 0;
            for (var j = -half; j <= half; j++)
            {
                var at = Math.Clamp(middle + i + j, 0, rows - 1) * 3;
                var weight = kernel[j + half];
                blue += weight * profile[at];
                green += weight * profile[at + 1];
                red += weight * profile[at + 2];
            }

            responses[i + within + 1] = Math.Sqrt((blue * blue) + (green * green) + (red * red));
        }

        var best = -1;
        for (var i = 1; i < responses.Length - 1; i++)
        {
            var isPeak = responses[i] >= responses[i - 1] && responses[i] > responses[i + 1];
            if (isPeak && (best < 0 || responses[i] > responses[best]))
            {
                best = i;
            }
        }

        if (best < 0)
        {
            return null;
        }

        var curve = responses[best - 1] - (2 * responses[best]) + responses[best + 1];
        var shift = curve < 0 ? (responses[best - 1] - responses[best + 1]) / (2 * curve) : 0;
        return ((best - within - 1 + shift) / Fineness, responses[best]);
    }
}
