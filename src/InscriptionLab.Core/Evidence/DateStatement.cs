namespace InscriptionLab.Evidence;

/// <summary>One thing on the piece that tells of its years.</summary>
/// <param name="What">The words on the piece, and what they are: "the form 'Tolliver'".</param>
/// <param name="Interval">The years.</param>
/// <param name="Source">Where the years come from.</param>
public sealed record DateStatement(string What, DateInterval Interval, string Source);
