using System;

namespace InscriptionLab.Cataloguing.Rows;

/// <summary>A file that could not be examined, and why.</summary>
internal sealed class RefusalRow
{
    public long Id { get; set; }

    public required string File { get; set; }

    public string? Sha256 { get; set; }

    public required string Sentence { get; set; }

    public DateTimeOffset MadeAt { get; set; }
}
