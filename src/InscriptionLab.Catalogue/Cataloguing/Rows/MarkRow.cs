namespace InscriptionLab.Cataloguing.Rows;

/// <summary>The picture of one line of lettering, laid flat, with its embedding.</summary>
internal sealed class MarkRow
{
    public long Id { get; set; }

    public long LineId { get; set; }

    public LineRow? Line { get; set; }

    /// <summary>Gets or sets the embedding, one signed byte a dimension; null where the line has none.</summary>
    public byte[]? Embedding { get; set; }

    /// <summary>Gets or sets the boxes of the letters in the picture, spaces left out: left, top, right, bottom.</summary>
    public required string Boxes { get; set; }

    /// <summary>Gets or sets the picture as a grey PNG file.</summary>
    public required byte[] Picture { get; set; }
}
