using System;

namespace InscriptionLab.Vision.Tubes;

/// <summary>
/// How surely an edge runs along the tube at each row of each strip: the colour step between the rows just above and just below,
/// measured against the steps that the texture of this photo makes anyway, and capped so that no single strong piece decides.
/// </summary>
internal sealed class EdgeEvidence
{
    /// <summary>Rows averaged on either side of the edge.</summary>
    internal const int Reach = 2;

    /// <summary>Evidence of a clear edge, the most a strip can give.</summary>
    internal const double Clear = 1 - Doubt;

    /// <summary>What a strip without an edge subtracts.</summary>
    private const double Doubt = 0.35;

    /// <summary>The most a strip can take away.</summary>
    private const double LargestLoss = 0.3;

    /// <summary>Colour step, in units of the texture's, from which an edge is clear.</summary>
    private const double ClearStep = 4;

    /// <summary>Share of all steps that are no larger than the texture's.</summary>
    private const double TextureQuantile = 0.35;

    /// <summary>Rows left out beside a row, and rows looked at beyond them, for the steps usual there.</summary>
    private const int Aside = 4;
    private const int Besides = 10;

    /// <summary>Step below which no texture is assumed to lie, in L*a*b* units: JPEG and rounding.</summary>
    private const double SmallestTexture = 0.4;

    /// <summary>What an outline seen by the network adds to the promise of a place: as much as a clear edge.</summary>
    private const double OutlineShare = Clear;

    /// <summary>Evidence of a place out of the picture: all but neutral, so that a tube may leave the picture and come back.</summary>
    private const float OutOfPicture = -0.02f;

    private readonly float[] _evidence;
    private readonly float[] _promise;

    private EdgeEvidence(TurnedProfiles profiles, float[] evidence, float[] promise)
    {
        Profiles = profiles;
        _evidence = evidence;
        _promise = promise;
    }

    internal TurnedProfiles Profiles { get; }

    /// <summary>Gives the evidence at a strip and row; rows out of the picture are all but neutral.</summary>
    internal double this[int strip, int row]
    {
        get
        {
            if ((uint)row >= (uint)Profiles.Rows)
            {
                return OutOfPicture;
            }

            var value = _evidence[(strip * Profiles.Rows) + row];
            return float.IsNaN(value) ? OutOfPicture : value;
        }
    }

    /// <summary>Gives what each row of a strip promises to a search for outlines: the evidence, and more where the network sees an outline; with rows out of the picture before and after.</summary>
    /// <param name="strip">The strip.</param>
    /// <param name="beyond">Rows out of the picture on either side.</param>
    internal float[] Promise(int strip, int beyond)
    {
        var rows = new float[Profiles.Rows + (2 * beyond)];
        rows.AsSpan().Fill(OutOfPicture);
        for (var row = 0; row < Profiles.Rows; row++)
        {
            var value = _promise[(strip * Profiles.Rows) + row];
            if (!float.IsNaN(value))
            {
                rows[row + beyond] = value;
            }
        }

        return rows;
    }

    /// <summary>Gives a value indicating whether a place of a line lies in the picture.</summary>
    internal bool InPicture(int strip, double row) =>
        row >= 0 && row < Profiles.Rows && !float.IsNaN(_evidence[(strip * Profiles.Rows) + (int)row]);

    /// <summary>Sums the evidence of a line over a range of strips, as a share of all strips.</summary>
    internal double Sum(EdgeLine line, int first, int last)
    {
        double sum = 0;
        for (var strip = first; strip <= last; strip++)
        {
            sum += this[strip, (int)Math.Round(line.At(Profiles.Middles[strip]))];
        }

        return sum / Profiles.Strips;
    }

    /// <summary>Weighs the steps of levelled profiles.</summary>
    /// <param name="profiles">The profiles.</param>
    /// <param name="maps">What the network sees in the photo; null where none looked.</param>
    internal static EdgeEvidence From(TurnedProfiles profiles, TubeMaps? maps = null)
    {
        var steps = new float[profiles.Strips * profiles.Rows];
        for (var strip = 0; strip < profiles.Strips; strip++)
        {
            for (var row = 0; row < profiles.Rows; row++)
            {
                steps[(strip * profiles.Rows) + row] = (float)Step(profiles, strip, row);
            }
        }

        var known = Array.FindAll(steps, static step => !float.IsNaN(step));
        Array.Sort(known);
        var texture = SmallestTexture + (known.Length == 0 ? 0 : known[(int)(TextureQuantile * (known.Length - 1))]);
        var evidence = new float[steps.Length];
        var medians = new double[profiles.Rows + Besides + (2 * Aside)];
        for (var strip = 0; strip < profiles.Strips; strip++)
        {
            var column = steps.AsSpan(strip * profiles.Rows, profiles.Rows);
            Medians(column, medians);
            for (var row = 0; row < profiles.Rows; row++)
            {
                var around = Math.Max(texture, Around(medians, row));
                evidence[(strip * profiles.Rows) + row] = (float)Math.Max(-LargestLoss, Math.Min(column[row] / (around * ClearStep), 1) - Doubt);
            }
        }

        return new EdgeEvidence(profiles, evidence, maps is null ? evidence : Promise(profiles, evidence, maps));
    }

    private static float[] Promise(TurnedProfiles profiles, float[] evidence, TubeMaps maps)
    {
        var promise = new float[evidence.Length];
        for (var strip = 0; strip < profiles.Strips; strip++)
        {
            for (var row = 0; row < profiles.Rows; row++)
            {
                var at = (strip * profiles.Rows) + row;
                promise[at] = evidence[at] + (float)(OutlineShare * maps.At(profiles.ToPhoto(profiles.Middles[strip], row)).Outline);
            }
        }

        return promise;
    }

    /// <summary>The steps usual beside a row: the mean of the medians above and below it. Threads of cloth and the slopes of a highlight have many like steps, an outline stands alone.</summary>
    private static double Around(double[] medians, int row)
    {
        var (above, below) = (medians[row], medians[row + Besides + (2 * Aside)]);
        return double.IsNaN(above) ? (double.IsNaN(below) ? 0 : below) : double.IsNaN(below) ? above : (above + below) / 2;
    }

    /// <summary>Fills in the median of the steps from each row to <see cref="Besides"/> rows further; the first one starts where the first row's look above it does.</summary>
    private static void Medians(ReadOnlySpan<float> steps, double[] medians)
    {
        for (var index = 0; index < medians.Length; index++)
        {
            var from = index - Besides - Aside;
            medians[index] = Median(steps, from, from + Besides);
        }
    }

    private static double Median(ReadOnlySpan<float> steps, int from, int to)
    {
        Span<float> some = stackalloc float[to - from + 1];
        var count = 0;
        for (var row = Math.Max(0, from); row <= Math.Min(steps.Length - 1, to); row++)
        {
            if (!float.IsNaN(steps[row]))
            {
                some[count++] = steps[row];
            }
        }

        some[..count].Sort();
        return count == 0 ? double.NaN : some[count / 2];
    }

    private static double Step(TurnedProfiles profiles, int strip, int row)
    {
        if (row < Reach || row + Reach >= profiles.Rows)
        {
            return double.NaN;
        }

        double square = 0;
        for (var channel = 0; channel < 3; channel++)
        {
            double step = 0;
            for (var i = 1; i <= Reach; i++)
            {
                step += profiles.Colour(strip, row + i)[channel] - profiles.Colour(strip, row - i)[channel];
            }

            square += step * step / (Reach * Reach);
        }

        return Math.Sqrt(square);
    }
}
