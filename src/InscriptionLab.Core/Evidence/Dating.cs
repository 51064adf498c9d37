using System.Collections.Immutable;
using System.Globalization;
using System.Linq;

namespace InscriptionLab.Evidence;

/// <summary>The years that lettering and construction tell of, put together.</summary>
/// <param name="Statements">What tells of years; may be empty.</param>
/// <param name="Combined">The years that fit all statements; null where none do or where there is no statement.</param>
public sealed record Dating(ImmutableArray<DateStatement> Statements, DateInterval? Combined)
{
    /// <summary>How far the years reach; said wherever they are shown.</summary>
    public const string Reach = "The years are those of the words and parts; words may have been cut later, and parts exchanged.";

    /// <summary>Said where no year fits all statements.</summary>
    public const string Apart = "These do not fit together: one of them was misread, or the list is wanting, or not all was made at one time.";

    /// <summary>Gets a value indicating whether the statements do not fit together.</summary>
    public bool IsApart => Statements.Length > 0 && Combined is null;

    /// <summary>Gets the years that hold the asked coverage, each statement doubted as much as its own coverage says; null where there is no statement.</summary>
    public DateInterval? Years { get; private init; }

    /// <summary>Gets the share of the weight within <see cref="Years"/>.</summary>
    public double Coverage { get; private init; }

    /// <summary>Gets the pairs of statements that have no year in common, in sentences.</summary>
    public ImmutableArray<string> Conflicts { get; private init; } = [];

    /// <summary>Gets which observation not yet made would narrow the years most; null where none would.</summary>
    public NextObservation? Next { get; init; }

    /// <summary>Gets the dating in sentences; empty where nothing tells of years.</summary>
    public ImmutableArray<string> Sentences => Statements.IsEmpty
        ? [.. Next is { } first ? [first.Sentence] : ImmutableArray<string>.Empty]
        :
        [
            .. Statements.Select(statement => string.Create(CultureInfo.InvariantCulture, $"{Capital(statement.What)}: {statement.Interval} ({statement.Source}; taken to hold for {statement.Coverage:0 %} of such pieces).")),
            Combined is { } years
                ? $"Together: {years}. {Reach}"
                : Apart,
            .. Conflicts,
            .. Years is { } wide ? [string.Create(CultureInfo.InvariantCulture, $"With each of these doubted as said, the years that hold {Coverage:0 %} are: {wide}.")] : ImmutableArray<string>.Empty,
            .. Next is { } next ? [next.Sentence] : ImmutableArray<string>.Empty,
        ];

    internal static Dating Of(ImmutableArray<DateStatement> statements, double coverage)
    {
        if (statements.IsEmpty)
        {
            return new Dating([], null);
        }

        DateInterval? combined = default(DateInterval);
        foreach (var statement in statements)
        {
            combined = combined?.Intersect(statement.Interval);
        }

        var weights = YearWeights.Of(statements);
        var years = weights.Holding(coverage);
        return new Dating(statements, combined) { Years = years, Coverage = weights.Within(years), Conflicts = DateConflicts.Among(statements) };
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
