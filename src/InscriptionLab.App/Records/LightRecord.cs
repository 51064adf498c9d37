namespace InscriptionLab.App.Records;

/// <summary>From which side the light comes.</summary>
/// <param name="From">The side in words.</param>
/// <param name="SideDeg">Direction to the lamp over the surface, from the reading direction toward the foot of the letters.</param>
/// <param name="UncertaintyDeg">Its standard uncertainty.</param>
/// <param name="InPhotoDeg">The direction in the photo, from the X axis toward the Y axis.</param>
/// <param name="Source">What told it.</param>
internal sealed record LightRecord(string From, double SideDeg, double UncertaintyDeg, double InPhotoDeg, string Source);
