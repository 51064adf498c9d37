using System.Collections.Immutable;
using System.Linq;

namespace InscriptionLab.Evidence;

/// <summary>Says which statements of years contradict each other, two by two.</summary>
internal static class DateConflicts
{
    internal static ImmutableArray<string> Among(ImmutableArray<DateStatement> statements) =>
    [
        .. from first in Enumerable.Range(0, statements.Length)
           from second in Enumerable.Range(first + 1, statements.Length - first - 1)
           where statements[first].Interval.Intersect(statements[second].Interval) is null
           select Sentence(statements[first], statements[second]),
    ];

    private static string Sentence(DateStatement first, DateStatement second)
    {
        var (earlier, later) = first.Interval.To < second.Interval.From ? (first, second) : (second, first);
        var sentence = $"{Capital(later.What)} says later than {earlier.What} allows ({later.Interval} against {earlier.Interval}).";
        return (earlier.Part, later.Part) switch
        {
            (null, null) => sentence,
            var (one, other) when one == other => sentence + " One of the two may be a repair.",
            _ => sentence + " Parts may not belong together, or one is a repair.",
        };
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
