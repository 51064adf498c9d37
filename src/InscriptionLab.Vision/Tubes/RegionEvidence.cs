using System;

namespace InscriptionLab.Vision.Tubes;

/// <summary>The network's maps in the turned picture: for each strip and row how surely there is tube wall, and how surely an outline.</summary>
internal sealed class RegionEvidence
{
    /// <summary>Rows by which an outline's cell may miss the edge: a cell of the network is about 16 working pixels.</summary>
    private const int OutlineReach = 8;

    private readonly float[] _wallSums;
    private readonly int[] _knownSums;
    private readonly float[] _outline;
    private readonly int _rows;

    private RegionEvidence(float[] wallSums, int[] knownSums, float[] outline, int rows) =>
        (_wallSums, _knownSums, _outline, _rows) = (wallSums, knownSums, outline, rows);

    internal static RegionEvidence From(TurnedProfiles profiles, TubeMaps maps)
    {
        var rows = profiles.Rows;
        var wallSums = new float[profiles.Strips * (rows + 1)];
        var knownSums = new int[wallSums.Length];
        var outline = new float[profiles.Strips * rows];
        var raw = new float[rows];
        for (var strip = 0; strip < profiles.Strips; strip++)
        {
            var at = strip * (rows + 1);
            for (var row = 0; row < rows; row++)
            {
                var known = profiles.InPicture(strip, row);
                var (wall, edge) = known ? maps.At(profiles.ToPhoto(profiles.Middles[strip], row)) : default;
                wallSums[at + row + 1] = wallSums[at + row] + wall;
                knownSums[at + row + 1] = knownSums[at + row] + (known ? 1 : 0);
                raw[row] = known ? edge : float.NaN;
            }

            Widen(raw, outline.AsSpan(strip * rows, rows));
        }

        return new RegionEvidence(wallSums, knownSums, outline, rows);
    }

    /// <summary>Gives how likely an outline runs within reach of a row; not a number out of the picture.</summary>
    internal float Outline(int strip, int row) => (uint)row < (uint)_rows ? _outline[(strip * _rows) + row] : float.NaN;

    /// <summary>Gives the sum of wall probability over rows, and how many of the rows lie in the picture.</summary>
    internal (double Wall, int Known) Between(int strip, double from, double to)
    {
        var first = (int)Math.Clamp(Math.Round(from), 0, _rows);
        var end = (int)Math.Clamp(Math.Round(to), 0, _rows);
        if (end <= first)
        {
            return (0, 0);
        }

        var at = strip * (_rows + 1);
        return (_wallSums[at + end] - _wallSums[at + first], _knownSums[at + end] - _knownSums[at + first]);
    }

    private static void Widen(float[] raw, Span<float> target)
    {
        for (var row = 0; row < raw.Length; row++)
        {
            var largest = raw[row];
            for (var i = Math.Max(0, row - OutlineReach); i <= Math.Min(raw.Length - 1, row + OutlineReach) && !float.IsNaN(largest); i++)
            {
                largest = raw[i] > largest ? raw[i] : largest;
            }

            target[row] = largest;
        }
    }
}
