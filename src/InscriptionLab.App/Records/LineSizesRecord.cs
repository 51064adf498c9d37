namespace InscriptionLab.App.Records;

/// <summary>Sizes of one line of lettering; uncertainties are expanded, k = 2.</summary>
/// <param name="Line">Number of the line, from 0.</param>
/// <param name="TallestMm">Height of the tallest letter.</param>
/// <param name="TallestExpandedMm">Its uncertainty.</param>
/// <param name="MedianMm">Median height of the letters.</param>
/// <param name="FromEndMm">Distance of the lettering from the nearer end of the tube; null where no end is in the photo.</param>
/// <param name="FromEndExpandedMm">Its uncertainty.</param>
internal sealed record LineSizesRecord(int Line, double TallestMm, double TallestExpandedMm, double MedianMm, double? FromEndMm, double? FromEndExpandedMm);
