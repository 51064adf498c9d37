namespace InscriptionLab.Cataloguing.Rows;

/// <summary>A form near to a reading.</summary>
internal sealed class NearestRow
{
    public long Id { get; set; }

    public long ExaminationId { get; set; }

    public int Rank { get; set; }

    public required string Form { get; set; }

    public required string Maker { get; set; }

    public required string MakerFolded { get; set; }

    public required string Status { get; set; }

    /// <summary>Gets or sets the letters that differ, as in the record.</summary>
    public required string Differences { get; set; }
}
