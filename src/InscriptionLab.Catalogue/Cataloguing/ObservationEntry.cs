using System;

namespace InscriptionLab.Cataloguing;

/// <summary>One thing that a person saw or measured on an object itself.</summary>
/// <param name="Feature">The question of the checklist.</param>
/// <param name="Answer">The answer.</param>
/// <param name="FromYear">First year that it tells of; null where open.</param>
/// <param name="ToYear">Last year that it tells of; null where open.</param>
/// <param name="Source">What the years rest on; empty where it tells of none.</param>
/// <param name="By">Who saw it.</param>
/// <param name="MadeAt">When.</param>
public sealed record ObservationEntry(string Feature, string Answer, int? FromYear, int? ToYear, string Source, string By, DateTimeOffset MadeAt)
{
    /// <summary>Gets a value indicating whether the answer tells of years.</summary>
    public bool IsDated => FromYear is not null || ToYear is not null;
}
