using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Cells;

/// <summary>Finds ellipses that may be the circles of a cell: edge pixels vote for centres, then ellipses are tried on the edges round each centre. For finding only; measuring comes after.</summary>
internal static class CellFinder
{
    /// <summary>Longest side of the small copy.</summary>
    private const int SearchSide = 640;

    /// <summary>Smallest radius, in pixels of the small copy.</summary>
    private const int SmallestRadius = 14;

    /// <summary>Largest radius as a share of the shorter side.</summary>
    private const double LargestRadiusShare = 0.55;

    /// <summary>Centres looked at.</summary>
    private const int MostCentres = 5;
    private const int CentreDistance = 14;

    /// <summary>Finds candidates, the best covered first.</summary>
    /// <param name="image">Colour picture.</param>
    /// <param name="without">Polygon of the scale, to leave out; may be empty.</param>
    /// <param name="cancel">Stops the search.</param>
    /// <param name="mostCentres">Centres looked at, those with most votes first.</param>
    internal static List<EllipseCandidate> Find(ColourImage image, ImmutableArray<PixelPoint> without, CancellationToken cancel, int mostCentres = MostCentres)
    {
        var shrink = Math.Min(1.0, SearchSide / (double)Math.Max(image.Width, image.Height));
        var (pixels, width, height) = EdgePixels.Find(image, shrink, without);
        var largest = (int)(LargestRadiusShare * Math.Min(width, height));
        var found = new List<EllipseCandidate>();
        foreach (var (x, y) in Centres(pixels, width, height, largest, mostCentres))
        {
            cancel.ThrowIfCancellationRequested();
            found.AddRange(EllipseSearch.Round(pixels, x, y, SmallestRadius, largest));
        }

        var distinct = new List<EllipseCandidate>();
        foreach (var candidate in found.OrderByDescending(c => c.Coverage))
        {
            if (!distinct.Any(d => EllipseSearch.Same(d.Ellipse, candidate.Ellipse)))
            {
                distinct.Add(candidate);
            }
        }

        return [.. distinct.Select(c => c with { Ellipse = Enlarged(c.Ellipse, shrink) })];
    }

    private static FittedEllipse Enlarged(FittedEllipse e, double shrink) => e with
    {
        CentreX = ((e.CentreX + 0.5) / shrink) - 0.5,
        CentreY = ((e.CentreY + 0.5) / shrink) - 0.5,
        SemiMajor = e.SemiMajor / shrink,
        SemiMinor = e.SemiMinor / shrink,
    };

    private static List<(int X, int Y)> Centres(List<EdgePixel> pixels, int width, int height, int largest, int mostCentres)
    {
        var votes = new float[width * height];
        foreach (var pixel in pixels)
        {
            // Strong edges count a little more than weak ones, not in proportion: a rim is not found by its brightest piece.
            var weight = MathF.Sqrt(pixel.Strength);
            for (var r = SmallestRadius; r <= largest; r++)
            {
                Vote(votes, width, height, pixel.X + (r * pixel.GradientX), pixel.Y + (r * pixel.GradientY), weight);
                Vote(votes, width, height, pixel.X - (r * pixel.GradientX), pixel.Y - (r * pixel.GradientY), weight);
            }
        }

        var smooth = BoxSmooth(votes, width, height);
        var centres = new List<(int X, int Y)>();
        for (var n = 0; n < mostCentres; n++)
        {
            var best = -1;
            for (var i = 0; i < smooth.Length; i++)
            {
                if (smooth[i] > 0 && (best < 0 || smooth[i] > smooth[best]))
                {
                    best = i;
                }
            }

            if (best < 0)
            {
                break;
            }

            var (x, y) = (best % width, best / width);
            centres.Add((x, y));
            for (var dy = -CentreDistance; dy <= CentreDistance; dy++)
            {
                for (var dx = -CentreDistance; dx <= CentreDistance; dx++)
                {
                    if (x + dx >= 0 && x + dx < width && y + dy >= 0 && y + dy < height)
                    {
                        smooth[((y + dy) * width) + x + dx] = 0;
                    }
                }
            }
        }

        return centres;
    }

    private static void Vote(float[] votes, int width, int height, float x, float y, float weight)
    {
        var (column, row) = ((int)MathF.Round(x), (int)MathF.Round(y));
        if (column >= 0 && column < width && row >= 0 && row < height)
        {
            votes[(row * width) + column] += weight;
        }
    }

    /// <summary>Two passes of a running mean over 7 pixels each way: about a Gaussian of 3 pixels.</summary>
    private static float[] BoxSmooth(float[] votes, int width, int height)
    {
        const int Half = 3;
        var from = votes;
        for (var pass = 0; pass < 2; pass++)
        {
            var across = new float[from.Length];
            for (var y = 0; y < height; y++)
            {
                for (var x = 0; x < width; x++)
                {
                    var sum = 0f;
                    for (var d = -Half; d <= Half; d++)
                    {
                        sum += from[(y * width) + Math.Clamp(x + d, 0, width - 1)];
                    }

                    across[(y * width) + x] = sum;
                }
            }

            var down = new float[from.Length];
            for (var y = 0; y < height; y++)
            {
                for (var x = 0; x < width; x++)
                {
                    var sum = 0f;
                    for (var d = -Half; d <= Half; d++)
                    {
                        sum += across[(Math.Clamp(y + d, 0, height - 1) * width) + x];
                    }

                    down[(y * width) + x] = sum;
                }
            }

            from = down;
        }

        return from;
    }
}
