using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>Where the tube lies in the photo.</summary>
/// <param name="Axis">Two points.</param>
/// <param name="Silhouettes">Two outlines of two points each.</param>
/// <param name="DiameterPx">Distance between the outlines at the middle.</param>
/// <param name="Confidence">How well edges support both outlines.</param>
/// <param name="By">The person who drew them; null where the program found them.</param>
internal sealed record TubeAnswer(ImmutableArray<double[]> Axis, ImmutableArray<ImmutableArray<double[]>> Silhouettes, double DiameterPx, double Confidence, HandAnswer? By);
