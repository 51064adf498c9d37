namespace InscriptionLab.App.Records;

/// <summary>A circle that was seen and given no role.</summary>
/// <param name="DiameterMm">About how wide it is, in millimetres, without an uncertainty.</param>
/// <param name="SeenShare">Share of its outline that was seen, 0 to 1.</param>
/// <param name="Ellipse">The circle in the photo.</param>
internal sealed record OtherCircleRecord(double DiameterMm, double SeenShare, EllipseRecord Ellipse);
