using System;
using System.Collections.Generic;
using System.Linq;

namespace InscriptionLab.Assess.Scores;

/// <summary>Some errors: how many, their median, 95th percentile and largest (the value at the nearest rank, none in between).</summary>
/// <param name="Count">How many.</param>
/// <param name="Median">Median.</param>
/// <param name="Percentile95">95th percentile.</param>
/// <param name="Largest">Largest.</param>
internal sealed record Spread(int Count, double Median, double Percentile95, double Largest)
{
    private const double Half = 0.5;
    private const double NinetyFive = 0.95;

    /// <summary>Gives the spread of some errors, or null where there are none.</summary>
    internal static Spread? Of(IEnumerable<double> errors)
    {
        var sorted = errors.Order().ToList();
        return sorted.Count == 0 ? null : new Spread(sorted.Count, At(sorted, Half), At(sorted, NinetyFive), sorted[^1]);
    }

    private static double At(List<double> sorted, double share) =>
        sorted[Math.Min(sorted.Count - 1, (int)Math.Round(share * (sorted.Count - 1), MidpointRounding.ToEven))];
}
