namespace InscriptionLab.App.Records;

/// <summary>What gave the scale.</summary>
/// <param name="Source">card, checkerboard, rule, aruco, id1, disc or points.</param>
/// <param name="PxPerMm">Pixels per millimetre at the cell's centre, in the plane of its rim.</param>
/// <param name="RelativeUncertainty">Relative standard uncertainty (k = 1).</param>
internal sealed record ScaleRecord(string Source, double PxPerMm, double RelativeUncertainty);
