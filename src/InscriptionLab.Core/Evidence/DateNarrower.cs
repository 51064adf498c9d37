using System.Collections.Immutable;
using System.Linq;

namespace InscriptionLab.Evidence;

/// <summary>Finds the open question of the checklist whose answer is expected to narrow the years most: each answer is as probable as the years now make it.</summary>
internal static class DateNarrower
{
    /// <summary>Fewest years that an answer must be expected to save; less is not worth taking an instrument apart for.</summary>
    private const double LeastSaved = 1;

    internal static NextObservation? Next(ConstructionTable table, ConstructionRecord? record, ImmutableArray<DateStatement> statements, double coverage)
    {
        if (statements.IsEmpty)
        {
            return null;
        }

        var now = YearWeights.Of(statements);
        var width = now.Width(coverage);
        return table.Rows
            .GroupBy(row => row.Feature)
            .Where(question => record is null || record.Seen.All(seen => seen.Feature != question.Key))
            .Where(question => question.Any(answer => answer.IsDated))
            .Select(question => new NextObservation($"{question.First().Question} (of the {question.First().Part})", width, Expected(now, [.. question], coverage)))
            .Where(next => next.YearsExpected <= width - LeastSaved)
            .OrderBy(next => next.YearsExpected)
            .FirstOrDefault();
    }

    private static double Expected(YearWeights now, ImmutableArray<ConstructionFeature> answers, double coverage)
    {
        var likelihoods = answers.Select(answer => YearWeights.Likelihood(answer.Years, answer.Coverage)).ToArray();

        // In each year the answers share 1 in proportion to how well the year explains them.
        for (var year = 0; year < likelihoods[0].Length; year++)
        {
            var sum = likelihoods.Sum(likelihood => likelihood[year]);
            foreach (var likelihood in likelihoods)
            {
                likelihood[year] /= sum;
            }
        }

        return likelihoods.Select(likelihood => now.With(likelihood)).Sum(answer => answer.Probability * answer.After.Width(coverage));
    }
}
