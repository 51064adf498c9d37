namespace InscriptionLab.Evidence;

/// <summary>One thing on the piece that tells of its years.</summary>
/// <param name="What">The words on the piece, and what they are: "the form 'Tolliver'".</param>
/// <param name="Interval">The years.</param>
/// <param name="Source">Where the years come from.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Coverage">Share of the pieces that show this and fall within the years, above 0 and at most 1.</param>
public sealed record DateStatement(string What, DateInterval Interval, string Source, DateKind Kind, double Coverage)
{
    /// <summary>Gets the part of the instrument that it dates; null for the lettering.</summary>
    public string? Part { get; init; }
}
