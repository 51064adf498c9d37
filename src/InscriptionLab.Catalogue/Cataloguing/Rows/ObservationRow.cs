using System;

namespace InscriptionLab.Cataloguing.Rows;

/// <summary>What a person saw or measured on an object itself, with name and time. Rows are added and withdrawn, never changed.</summary>
internal sealed class ObservationRow
{
    public long Id { get; set; }

    public long ObjectId { get; set; }

    /// <summary>Gets or sets the question of the checklist.</summary>
    public required string Feature { get; set; }

    public required string Answer { get; set; }

    /// <summary>Gets or sets the first year that the answer tells of; null where it leaves that open.</summary>
    public int? FromYear { get; set; }

    /// <summary>Gets or sets the last year that the answer tells of; null where it leaves that open.</summary>
    public int? ToYear { get; set; }

    /// <summary>Gets or sets what the years rest on; empty where the answer tells of none.</summary>
    public required string Source { get; set; }

    public required string ByWhom { get; set; }

    public DateTimeOffset MadeAt { get; set; }

    public DateTimeOffset? WithdrawnAt { get; set; }
}
