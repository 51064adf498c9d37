using System;
using System.Collections.Generic;

namespace InscriptionLab.Cataloguing.Rows;

/// <summary>One examination: the record whole, and what is searched in columns of its own.</summary>
internal sealed class ExaminationRow
{
    public long Id { get; set; }

    /// <summary>Gets or sets the name of the examination that stays the same in every catalogue.</summary>
    public required string Uid { get; set; }

    public long PhotoId { get; set; }

    public PhotoRow? Photo { get; set; }

    /// <summary>Gets or sets what was done: see <see cref="EntryKind"/>.</summary>
    public required string Kind { get; set; }

    public DateTimeOffset MadeAt { get; set; }

    public DateTimeOffset AddedAt { get; set; }

    public required string Program { get; set; }

    public required string Model { get; set; }

    public required string List { get; set; }

    public required string ListSha256 { get; set; }

    /// <summary>Gets or sets the hash of photo, kind, program, model and list, and of what persons read letter by letter where they did: the same work is kept once.</summary>
    public required string Fingerprint { get; set; }

    public required string Outcome { get; set; }

    public double? DiameterPx { get; set; }

    public DateTimeOffset? TrashedAt { get; set; }

    public required string RecordSha256 { get; set; }

    /// <summary>Gets or sets the JSON record exactly as the program wrote it.</summary>
    public required string Record { get; set; }

    public ICollection<LineRow> Lines { get; } = [];

    public ICollection<NearestRow> Nearest { get; } = [];

    public ICollection<MeasurementRow> Measurements { get; } = [];

    public ICollection<CorrectionRow> Corrections { get; } = [];

    public ICollection<PictureRow> Pictures { get; } = [];
}
