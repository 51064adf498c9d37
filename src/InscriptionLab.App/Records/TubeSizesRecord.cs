using System.Collections.Immutable;

namespace InscriptionLab.App.Records;

/// <summary>Sizes of a tube and its lettering from a scale beside it; uncertainties are expanded, k = 2.</summary>
/// <param name="Scale">What gave the scale.</param>
/// <param name="DiameterMm">Diameter at the middle of the visible length.</param>
/// <param name="ExpandedUncertaintyMm">Its uncertainty.</param>
/// <param name="Lines">Sizes of lines.</param>
/// <param name="Notes">What was assumed.</param>
internal sealed record TubeSizesRecord(string Scale, double DiameterMm, double ExpandedUncertaintyMm, ImmutableArray<LineSizesRecord> Lines, ImmutableArray<string> Notes);
