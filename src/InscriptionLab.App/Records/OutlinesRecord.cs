namespace InscriptionLab.App.Records;

/// <summary>How sharp the tube's outlines are.</summary>
/// <param name="Mtf50CyclesPerPx">Spatial frequency at which half the contrast is left, cycles a pixel.</param>
/// <param name="RisePx">Distance over which the light rises from 10 to 90 % of the step.</param>
/// <param name="Places">Places along the outlines that could be measured.</param>
/// <param name="Source">How it was measured.</param>
internal sealed record OutlinesRecord(double Mtf50CyclesPerPx, double RisePx, int Places, string Source);
