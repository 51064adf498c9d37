namespace InscriptionLab.Cells.Fitting;

/// <summary>What is taken for known, and how well, before the photo is read. Lengths in millimetres, uncertainties as standard uncertainties.</summary>
/// <param name="Focal">Focal length in pixels.</param>
/// <param name="FocalRelative">Relative standard uncertainty of the focal length (of its logarithm).</param>
/// <param name="RimHeight">Height of the rim above the scale's plane.</param>
/// <param name="RimHeightUncertainty">Its standard uncertainty.</param>
/// <param name="ConcentricityUncertainty">Standard uncertainty of an inner circle's centre beside the axis, along each direction.</param>
/// <param name="ClearDepthUncertainty">Standard uncertainty of the clear aperture's depth below the rim, about zero.</param>
/// <param name="StopDepth">Depth of the stop below the rim.</param>
/// <param name="StopDepthUncertainty">Its standard uncertainty.</param>
public sealed record ScenePriors(
    double Focal,
    double FocalRelative,
    double RimHeight,
    double RimHeightUncertainty,
    double ConcentricityUncertainty,
    double ClearDepthUncertainty,
    double StopDepth,
    double StopDepthUncertainty);
