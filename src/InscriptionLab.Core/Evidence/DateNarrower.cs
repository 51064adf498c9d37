using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;

namespace InscriptionLab.Evidence;

/// <summary>Finds, among what could still be looked at, what is expected to narrow the years most.</summary>
internal static class DateNarrower
{
    /// <summary>Fewest years that an answer must be expected to save; less is not worth taking an instrument apart for.</summary>
    private const double LeastSaved = 1;

    internal static NextObservation? Next(IEnumerable<DateQuestion> questions, ImmutableArray<DateStatement> statements, double coverage)
    {
        var now = YearWeights.Of(statements);
        var width = now.Width(coverage);
        return questions
            .Select(question => new NextObservation(question.What, width, question.Expected(now, coverage)))
            .Where(next => next.YearsExpected <= width - LeastSaved)
            .OrderBy(next => next.YearsExpected)
            .FirstOrDefault();
    }
}
