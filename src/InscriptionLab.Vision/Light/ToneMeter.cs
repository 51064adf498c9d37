using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Advice;
using InscriptionLab.Imaging;
using InscriptionLab.Vision.Relief;

namespace InscriptionLab.Vision.Light;

/// <summary>Looks whether the grooves of a line are brighter or darker than the metal beside them. Under one low lamp each groove has a bright and a dark wall, which balance.</summary>
internal static class ToneMeter
{
    /// <summary>Share of a piece's pixels that stand out most and are taken for grooves: strokes of an ordinary letter cover a fifth of its box (common practice).</summary>
    private const double Strokes = 0.2;

    /// <summary>Blurs that give bare metal, along and across, as shares of the crop's height.</summary>
    private const double GroundAlong = 1;
    private const double GroundAcross = 0.25;

    /// <summary>Columns of a piece, as a share of the crop's height: about a letter.</summary>
    private const double Piece = 0.75;

    /// <summary>Rows above and below the ink, as a share of the crop's height.</summary>
    private const double Margin = 0.12;

    /// <summary>Fewest pieces whose scatter tells an uncertainty.</summary>
    private const int FewestPieces = 4;

    internal static IEnumerable<LineTone> Of(Readings.Reading reading)
    {
        for (var line = 0; line < reading.Lines.Length; line++)
        {
            var pieces = Pieces(reading.Lines[line].Line.Crop).ToList();
            if (pieces.Count >= FewestPieces)
            {
                var mean = pieces.Average();
                var variance = pieces.Sum(piece => (piece - mean) * (piece - mean)) / (pieces.Count - 1);
                yield return new LineTone(line, mean, Math.Sqrt(variance / pieces.Count));
            }
        }
    }

    private static IEnumerable<double> Pieces(GrayImage crop)
    {
        var (width, height) = (crop.Width, crop.Height);
        var (columns, margin) = (Math.Max(1, (int)(Piece * height)), (int)(Margin * height));
        var light = Array.ConvertAll(crop.Pixels.ToArray(), FlatLight.Linear);
        var metal = FlatLight.Blurred(light, width, height, GroundAlong * height, GroundAcross * height);

        // The crop has bare ground of about half its height before and behind the ink.
        for (var left = height / 2; left + columns <= width - (height / 2); left += columns)
        {
            var over = new List<double>();
            for (var row = margin; row < height - margin; row++)
            {
                for (var column = left; column < left + columns; column++)
                {
                    var at = (row * width) + column;
                    over.Add((light[at] / Math.Max(metal[at], 1e-3f)) - 1);
                }
            }

            yield return over.OrderByDescending(Math.Abs).Take(Math.Max(1, (int)(Strokes * over.Count))).Average();
        }
    }
}
