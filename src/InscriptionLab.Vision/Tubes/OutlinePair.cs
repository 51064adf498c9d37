namespace InscriptionLab.Vision.Tubes;

/// <summary>Two edges that may be the outlines of a tube, over the strips where both show.</summary>
/// <param name="Upper">Edge with the smaller rows.</param>
/// <param name="Lower">Edge with the larger rows.</param>
/// <param name="First">First strip.</param>
/// <param name="Last">Last strip.</param>
/// <param name="Score">Evidence of both less what speaks against the pair; up to about 1.3 where no network looked, to about 3.2 (<see cref="RegionLook.Score"/>) where one did. Only scores of the same kind compare.</param>
internal sealed record OutlinePair(EdgeLine Upper, EdgeLine Lower, int First, int Last, double Score);
