using System;
using System.Linq;
using InscriptionLab.Cells;
using InscriptionLab.Vision.Scales;

namespace InscriptionLab.Vision.Tests.Cells;

/// <summary>The coded squares of the scale card.</summary>
internal static class RenderedCard
{
    private static readonly bool[][] Black = [.. ScaleCard.Markers.Select(m => MarkerPattern.Of(m.Marker).ToArray())];

    /// <summary>Gives the light of the card at a place in millimetres from the first square's corner.</summary>
    internal static double Light(double x, double y)
    {
        for (var i = 0; i < Black.Length; i++)
        {
            var (_, left, top) = ScaleCard.Markers[i];
            const double Cell = ScaleCard.MarkerMillimetres / MarkerPattern.Cells;
            var (column, row) = (Math.Floor((x - left) / Cell), Math.Floor((y - top) / Cell));
            if (column >= 0 && row >= 0 && column < MarkerPattern.Cells && row < MarkerPattern.Cells)
            {
                return Black[i][((int)row * MarkerPattern.Cells) + (int)column] ? 0.04 : 0.75;
            }
        }

        return 0.75;
    }
}
