using System;
using System.Collections.Generic;
using System.Linq;

namespace InscriptionLab.Evidence;

/// <summary>
/// How the years share the weight of several statements: each statement gives every year inside its interval the same weight and every year
/// outside a smaller one, so that alone it would hold exactly its coverage inside; the statements multiply. All years weigh the same beforehand.
/// Statements that contradict each other therefore widen the result, and one weak statement cannot rule a year out.
/// </summary>
public sealed class YearWeights
{
    /// <summary>First year that is considered: before any telescope with brass draws.</summary>
    public const int FirstYear = 1650;

    /// <summary>Last year that is considered: beyond the trade that the tables tell of.</summary>
    public const int LastYear = 1980;

    private const int Years = LastYear - FirstYear + 1;

    /// <summary>Smallest weight outside an interval: even a law can be misread.</summary>
    private const double LeastLeak = 1e-4;

    private const double Dust = 1e-9;

    private readonly double[] _weights;

    private YearWeights(double[] weights)
    {
        var sum = weights.Sum();
        _weights = [.. weights.Select(weight => weight / sum)];
    }

    /// <summary>Gives the weights after some statements; without any, all years alike.</summary>
    public static YearWeights Of(IEnumerable<DateStatement> statements)
    {
        ArgumentNullException.ThrowIfNull(statements);
        var weights = Enumerable.Repeat(1.0, Years).ToArray();
        foreach (var statement in statements)
        {
            var likelihood = Likelihood(statement.Interval, statement.Coverage);
            for (var year = 0; year < Years; year++)
            {
                weights[year] *= likelihood[year];
            }
        }

        return new YearWeights(weights);
    }

    /// <summary>Gives how well each year, from <see cref="FirstYear"/> on, explains one statement; 1 inside its interval.</summary>
    internal static double[] Likelihood(DateInterval interval, double coverage)
    {
        var inside = Enumerable.Range(FirstYear, Years).Count(interval.Holds);
        var leak = inside is 0 or Years ? 1 : Math.Clamp((1 - coverage) / coverage * inside / (Years - inside), LeastLeak, 1);
        return [.. Enumerable.Range(FirstYear, Years).Select(year => interval.Holds(year) ? 1 : leak)];
    }

    /// <summary>Gives the share of the weight within an interval.</summary>
    public double Within(DateInterval interval) => Enumerable.Range(0, Years).Where(year => interval.Holds(year + FirstYear)).Sum(year => _weights[year]);

    /// <summary>Gives the weight of a year.</summary>
    public double Of(int year) => year is < FirstYear or > LastYear ? 0 : _weights[year - FirstYear];

    /// <summary>
    /// Gives years that hold at least a share of the weight: the heaviest years, all years of one weight together, and whatever lies between them.
    /// A side on which they reach the first or last year considered is open.
    /// </summary>
    public DateInterval Holding(double share)
    {
        var sum = 0.0;
        var (first, last) = (Years, -1);
        foreach (var level in Enumerable.Range(0, Years).GroupBy(year => Math.Round(_weights[year] / Dust)).OrderByDescending(level => level.Key))
        {
            (first, last) = (Math.Min(first, level.Min()), Math.Max(last, level.Max()));
            sum += level.Sum(year => _weights[year]);
            if (sum >= share - Dust)
            {
                break;
            }
        }

        return new DateInterval(first == 0 ? null : first + FirstYear, last == Years - 1 ? null : last + FirstYear);
    }

    /// <summary>Gives the number of years that hold at least a share of the weight.</summary>
    internal int Width(double share)
    {
        var years = Holding(share);
        return (years.To ?? LastYear) - (years.From ?? FirstYear) + 1;
    }

    /// <summary>Gives the weights after one more observation, and how probable that observation was.</summary>
    internal (double Probability, YearWeights After) With(double[] likelihood)
    {
        var after = _weights.Zip(likelihood, (weight, factor) => weight * factor).ToArray();
        return (after.Sum(), new YearWeights(after));
    }
}
