using System;
using System.Collections.Generic;

namespace InscriptionLab.Cataloguing.Rows;

/// <summary>One photo, known by the hash of its bytes.</summary>
internal sealed class PhotoRow
{
    public long Id { get; set; }

    public long ObjectId { get; set; }

    public ObjectRow? Object { get; set; }

    /// <summary>Gets or sets the SHA-256 of the file, 64 lower-case hexadecimal digits.</summary>
    public required string Sha256 { get; set; }

    /// <summary>Gets or sets the file as it was named when it was first examined.</summary>
    public required string File { get; set; }

    public int Width { get; set; }

    public int Height { get; set; }

    /// <summary>Gets or sets the perceptual hash, its 64 bits as a signed number.</summary>
    public long? PerceptualHash { get; set; }

    public DateTimeOffset AddedAt { get; set; }

    public ICollection<ExaminationRow> Examinations { get; } = [];
}
