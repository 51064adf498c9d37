using System;
using System.Globalization;

namespace InscriptionLab.Evidence;

/// <summary>Years from one to another, both included; null is open on that side. The default value is open on both sides.</summary>
public readonly record struct DateInterval
{
    /// <summary>Makes an interval.</summary>
    /// <param name="from">First year; null where open.</param>
    /// <param name="to">Last year; null where open.</param>
    /// <exception cref="ArgumentOutOfRangeException">The last year is before the first.</exception>
    public DateInterval(int? from, int? to)
    {
        if (from > to)
        {
            throw new ArgumentOutOfRangeException(nameof(to), to, "An interval ends no earlier than it begins.");
        }

        (From, To) = (from, to);
    }

    /// <summary>Gets the first year; null where open.</summary>
    public int? From { get; }

    /// <summary>Gets the last year; null where open.</summary>
    public int? To { get; }

    /// <summary>Gives the years that lie in both; null where there are none.</summary>
    public DateInterval? Intersect(DateInterval other)
    {
        var from = Later(From, other.From);
        var to = Earlier(To, other.To);
        return from > to ? null : new DateInterval(from, to);
    }

    /// <summary>Gives the shortest interval that holds both.</summary>
    public DateInterval Hull(DateInterval other) => new(
        From is null || other.From is null ? null : Math.Min(From.Value, other.From.Value),
        To is null || other.To is null ? null : Math.Max(To.Value, other.To.Value));

    /// <summary>Tells whether a year lies in the interval.</summary>
    public bool Holds(int year) => (From ?? year) <= year && year <= (To ?? year);

    /// <inheritdoc/>
    public override string ToString() => (From, To) switch
    {
        (null, null) => "any year",
        ({ } from, null) => string.Create(CultureInfo.InvariantCulture, $"{from} or later"),
        (null, { } to) => string.Create(CultureInfo.InvariantCulture, $"{to} or earlier"),
        ({ } from, { } to) => string.Create(CultureInfo.InvariantCulture, $"{from} to {to}"),
    };

    private static int? Later(int? first, int? second) => first is null ? second : second is null ? first : Math.Max(first.Value, second.Value);

    private static int? Earlier(int? first, int? second) => first is null ? second : second is null ? first : Math.Min(first.Value, second.Value);
}
