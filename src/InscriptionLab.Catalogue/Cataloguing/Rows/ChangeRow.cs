using System;

namespace InscriptionLab.Cataloguing.Rows;

/// <summary>One step of a user that can be undone.</summary>
internal sealed class ChangeRow
{
    public long Id { get; set; }

    public DateTimeOffset MadeAt { get; set; }

    public required string ByWhom { get; set; }

    /// <summary>Gets or sets what was done: see <see cref="ChangeKind"/>.</summary>
    public required string Kind { get; set; }

    /// <summary>Gets or sets the row that was changed.</summary>
    public long Target { get; set; }

    /// <summary>Gets or sets what stood there before.</summary>
    public string? Before { get; set; }

    public required string Sentence { get; set; }

    public DateTimeOffset? UndoneAt { get; set; }
}
