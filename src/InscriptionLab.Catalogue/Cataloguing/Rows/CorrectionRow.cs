using System;

namespace InscriptionLab.Cataloguing.Rows;

/// <summary>What a user says a line reads, with name and time. Rows are added and withdrawn, never changed.</summary>
internal sealed class CorrectionRow
{
    public long Id { get; set; }

    public long ExaminationId { get; set; }

    /// <summary>Gets or sets the line, from 0.</summary>
    public int Line { get; set; }

    /// <summary>Gets or sets what the line read before, corrections that stood included.</summary>
    public required string Was { get; set; }

    public required string Becomes { get; set; }

    public required string ByWhom { get; set; }

    public DateTimeOffset MadeAt { get; set; }

    public required string Reason { get; set; }

    public DateTimeOffset? WithdrawnAt { get; set; }
}
