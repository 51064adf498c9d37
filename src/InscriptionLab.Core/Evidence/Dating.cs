using System.Collections.Immutable;
using System.Linq;

namespace InscriptionLab.Evidence;

/// <summary>The years that the lettering tells of, put together.</summary>
/// <param name="Statements">What tells of years; may be empty.</param>
/// <param name="Combined">The years that fit all statements; null where none do or where there is no statement.</param>
public sealed record Dating(ImmutableArray<DateStatement> Statements, DateInterval? Combined)
{
    /// <summary>Gets a value indicating whether the statements do not fit together.</summary>
    public bool IsApart => Statements.Length > 0 && Combined is null;

    /// <summary>Gets the dating in sentences; empty where nothing tells of years.</summary>
    public ImmutableArray<string> Sentences => Statements.IsEmpty
        ? []
        :
        [
            .. Statements.Select(statement => $"{Capital(statement.What)}: {statement.Interval} ({statement.Source})."),
            Combined is { } years
                ? $"Together: {years}. The years are those of the words; the words may have been cut later."
                : "These do not fit together: one of them was misread, or the list is wanting, or the words were not cut at one time.",
        ];

    internal static Dating Of(ImmutableArray<DateStatement> statements)
    {
        DateInterval? combined = statements.IsEmpty ? null : default(DateInterval);
        foreach (var statement in statements)
        {
            combined = combined?.Intersect(statement.Interval);
        }

        return new Dating(statements, combined);
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
