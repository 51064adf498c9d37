using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Advice;

namespace InscriptionLab.Vision.Light;

/// <summary>Looks whether the grooves of a line are brighter or darker than the metal beside them. Under one low lamp each groove has a bright and a dark wall, which balance.</summary>
internal static class ToneMeter
{
    /// <summary>Share of a piece's pixels that stand out most and are taken for grooves: strokes of an ordinary letter cover a fifth of its box (common practice).</summary>
    private const double Strokes = 0.2;

    /// <summary>Columns of a piece, as a share of the crop's height: about a letter.</summary>
    private const double Piece = 0.75;

    /// <summary>Rows above and below the ink, as a share of the crop's height.</summary>
    private const double Margin = 0.12;

    /// <summary>Fewest pieces whose scatter tells an uncertainty.</summary>
    private const int FewestPieces = 4;

    internal static IEnumerable<LineTone> Of(IReadOnlyList<LineLight> lines)
    {
        for (var line = 0; line < lines.Count; line++)
        {
            var pieces = Pieces(lines[line]).ToList();
            if (pieces.Count >= FewestPieces)
            {
                var mean = pieces.Average();
                var variance = pieces.Sum(piece => (piece - mean) * (piece - mean)) / (pieces.Count - 1);
                yield return new LineTone(line, mean, Math.Sqrt(variance / pieces.Count));
            }
        }
    }

    private static IEnumerable<double> Pieces(LineLight line)
    {
        var (width, height) = (line.Width, line.Height);
        var (columns, margin) = (Math.Max(1, (int)(Piece * height)), (int)(Margin * height));

        // The crop has bare ground of about half its height before and behind the ink.
        for (var left = height / 2; left + columns <= width - (height / 2); left += columns)
        {
            var over = new List<double>();
            for (var row = margin; row < height - margin; row++)
            {
                for (var column = left; column < left + columns; column++)
                {
                    over.Add(line.Over[(row * width) + column]);
                }
            }

            yield return over.OrderByDescending(Math.Abs).Take(Math.Max(1, (int)(Strokes * over.Count))).Average();
        }
    }
}
