using System;

namespace InscriptionLab.Vision.Tubes;

/// <summary>The network's maps in the turned picture: for each strip and row how surely a telescope is there.</summary>
internal sealed class RegionEvidence
{
    /// <summary>Width of the bands beyond two outlines in which there must be no telescope, as a share of the diameter, and in rows at least: a cell of the network is 16 rows.</summary>
    private const double BandBeyond = 0.15;
    private const double NarrowestBand = 10;

    private readonly float[] _sums;
    private readonly int[] _knownSums;
    private readonly TurnedProfiles _profiles;

    private RegionEvidence(TurnedProfiles profiles, float[] sums, int[] knownSums) => (_profiles, _sums, _knownSums) = (profiles, sums, knownSums);

    internal static RegionEvidence From(TurnedProfiles profiles, TubeMaps maps)
    {
        var sums = new float[profiles.Strips * (profiles.Rows + 1)];
        var knownSums = new int[sums.Length];
        for (var strip = 0; strip < profiles.Strips; strip++)
        {
            var at = strip * (profiles.Rows + 1);
            for (var row = 0; row < profiles.Rows; row++)
            {
                var known = profiles.InPicture(strip, row);
                sums[at + row + 1] = sums[at + row] + (known ? maps.At(profiles.ToPhoto(profiles.Middles[strip], row)).Telescope : 0);
                knownSums[at + row + 1] = knownSums[at + row] + (known ? 1 : 0);
            }
        }

        return new RegionEvidence(profiles, sums, knownSums);
    }

    /// <summary>Gives how surely a telescope is between two outlines, and just beyond the one and the other, 0 to 1.</summary>
    internal (double Inside, double Above, double Below) Look(EdgeLine upper, EdgeLine lower, int first, int last)
    {
        var (inside, above, below) = (default(Share), default(Share), default(Share));
        for (var strip = first; strip <= last; strip++)
        {
            var (from, to) = (upper.At(_profiles.Middles[strip]), lower.At(_profiles.Middles[strip]));
            var band = Math.Max(NarrowestBand, BandBeyond * (to - from));
            inside += Between(strip, from, to);
            above += Between(strip, from - band, from);
            below += Between(strip, to, to + band);
        }

        return (inside.Mean, above.Mean, below.Mean);
    }

    private Share Between(int strip, double from, double to)
    {
        var first = (int)Math.Clamp(Math.Round(from), 0, _profiles.Rows);
        var end = Math.Max(first, (int)Math.Clamp(Math.Round(to), 0, _profiles.Rows));
        var at = strip * (_profiles.Rows + 1);
        return new Share(_sums[at + end] - _sums[at + first], _knownSums[at + end] - _knownSums[at + first]);
    }

    private readonly record struct Share(double Sum, int Rows)
    {
        internal double Mean => Rows == 0 ? 0 : Sum / Rows;

        public static Share operator +(Share one, Share other) => new(one.Sum + other.Sum, one.Rows + other.Rows);
    }
}
