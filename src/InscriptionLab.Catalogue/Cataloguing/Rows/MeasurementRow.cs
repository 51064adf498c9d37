namespace InscriptionLab.Cataloguing.Rows;

/// <summary>One measured diameter with its expanded uncertainty.</summary>
internal sealed class MeasurementRow
{
    public long Id { get; set; }

    public long ExaminationId { get; set; }

    /// <summary>Gets or sets what was measured: outer, clear or stop.</summary>
    public required string Role { get; set; }

    public double ValueMm { get; set; }

    public double ExpandedMm { get; set; }

    public double CoverageFactor { get; set; }

    /// <summary>Gets or sets what gave the scale.</summary>
    public required string Scale { get; set; }

    /// <summary>Gets or sets the result in words, after the GUM.</summary>
    public required string Statement { get; set; }
}
