namespace InscriptionLab.Page.Answers;

/// <summary>A correction as the page sends it; which fields count depends on its kind.</summary>
/// <param name="Photo">The photo; for a letter also the place of photos read together.</param>
/// <param name="Kind">tube, ring, line, line-removed, letter or lamps.</param>
/// <param name="Person">Who makes it.</param>
/// <param name="Basis">What it was made on.</param>
/// <param name="First">tube: one outline, two points in the photo.</param>
/// <param name="Second">tube: the other.</param>
/// <param name="Line">line, line-removed, letter: the line; null for a new one.</param>
/// <param name="Box">line: four points in the strip, as the reader sees them.</param>
/// <param name="Letter">letter: its name in the line.</param>
/// <param name="Was">letter: what stood there.</param>
/// <param name="Becomes">letter: what the person reads.</param>
internal sealed record CorrectionRequest(
    string? Photo,
    string? Kind,
    string? Person,
    string? Basis,
    double[][]? First,
    double[][]? Second,
    string? Line,
    double[][]? Box,
    int? Letter,
    string? Was,
    string? Becomes)
{
    /// <summary>Gets for a ring the rim: middle, two half axes in pixels of the photo, direction of the first in degrees.</summary>
    public double[]? Rim { get; init; }

    /// <summary>Gets for lamps where that of each photo stood, in the order of the photos read together: degrees clockwise from right, and degrees over the plane of the picture.</summary>
    public double[][]? Lamps { get; init; }

    /// <summary>Gets for a ring the radius of its opening as a share of the rim's.</summary>
    public double? Opening { get; init; }
}
