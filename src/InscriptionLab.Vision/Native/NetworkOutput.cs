using System.Collections.Immutable;

namespace InscriptionLab.Vision.Native;

/// <summary>One output of a network.</summary>
/// <param name="Numbers">Values, last axis fastest.</param>
/// <param name="Shape">Length of each axis.</param>
internal sealed record NetworkOutput(float[] Numbers, ImmutableArray<long> Shape);
