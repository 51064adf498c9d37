namespace InscriptionLab.Cataloguing.Rows;

/// <summary>A picture of photos read together.</summary>
internal sealed class PictureRow
{
    public long Id { get; set; }

    public long ExaminationId { get; set; }

    /// <summary>Gets or sets what it shows: see <see cref="PictureEntry"/>.</summary>
    public required string Name { get; set; }

    public required string MediaType { get; set; }

    public int Width { get; set; }

    public int Height { get; set; }

    /// <summary>Gets or sets the picture file.</summary>
    public required byte[] Picture { get; set; }
}
