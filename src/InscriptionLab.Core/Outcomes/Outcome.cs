using System;

namespace InscriptionLab.Outcomes;

/// <summary>What a stage gives back: a result, or a reasoned "cannot tell from this photo, because…".</summary>
/// <typeparam name="T">Type of the result.</typeparam>
public abstract record Outcome<T>
{
    private Outcome()
    {
    }

    /// <summary>Goes on with the result, or carries the refusal through.</summary>
    public Outcome<TNext> Then<TNext>(Func<T, Outcome<TNext>> next)
    {
        ArgumentNullException.ThrowIfNull(next);
        return this switch
        {
            Found found => next(found.Value),
            Declined declined => new Outcome<TNext>.Declined(declined.Refusal),
            _ => throw new InvalidOperationException("An outcome is found or declined."),
        };
    }

    /// <summary>The stage has a result.</summary>
    /// <param name="Value">The result.</param>
    public sealed record Found(T Value) : Outcome<T>;

    /// <summary>The stage looked and could not tell.</summary>
    /// <param name="Refusal">Why, and what to do.</param>
    public sealed record Declined(Refusal Refusal) : Outcome<T>;
}
