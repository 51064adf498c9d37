using System;

namespace InscriptionLab.Vision.Tubes;

/// <summary>The network's maps in the turned picture: for each strip and row how surely plain tube wall is there.</summary>
internal sealed class RegionEvidence
{
    /// <summary>Width of the bands beyond two outlines in which there must be no wall, as a share of the diameter, and in rows at least: a cell of the network's nearest look is 5 rows.</summary>
    private const double BandBeyond = 0.15;
    private const double NarrowestBand = 10;

    private readonly float[] _sums;
    private readonly int[] _knownSums;
    private readonly TurnedProfiles _profiles;
    private readonly TubeMaps _maps;

    private RegionEvidence(TurnedProfiles profiles, TubeMaps maps, float[] sums, int[] knownSums) => (_profiles, _maps, _sums, _knownSums) = (profiles, maps, sums, knownSums);

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
                sums[at + row + 1] = sums[at + row] + (known ? maps.At(profiles.ToPhoto(profiles.Middles[strip], row)).Wall : 0);
                knownSums[at + row + 1] = knownSums[at + row] + (known ? 1 : 0);
            }
        }

        return new RegionEvidence(profiles, maps, sums, knownSums);
    }

    /// <summary>Looks at what lies between, at and beyond two outlines.</summary>
    internal RegionLook Look(EdgeLine upper, EdgeLine lower, int first, int last)
    {
        var (inside, insideUpper, insideLower, above, below) = (default(Share), default(Share), default(Share), default(Share), default(Share));
        double atUpper = 0;
        double atLower = 0;
        for (var strip = first; strip <= last; strip++)
        {
            var x = _profiles.Middles[strip];
            var (from, to) = (upper.At(x), lower.At(x));
            var band = Math.Max(NarrowestBand, BandBeyond * (to - from));
            var inner = Math.Min(band, (to - from) / 2);
            inside += Between(strip, from, to);
            insideUpper += Between(strip, from, from + inner);
            insideLower += Between(strip, to - inner, to);
            above += Between(strip, from - band, from);
            below += Between(strip, to, to + band);
            atUpper += _maps.At(_profiles.ToPhoto(x, from)).Outline;
            atLower += _maps.At(_profiles.ToPhoto(x, to)).Outline;
        }

        var strips = last - first + 1.0;
        return new RegionLook(inside.Mean, insideUpper.Mean - above.Mean, insideLower.Mean - below.Mean, atUpper / strips, atLower / strips);
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
