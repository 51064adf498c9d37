using InscriptionLab.Measures;

namespace InscriptionLab.Sizes;

/// <summary>Sizes of one line of lettering.</summary>
/// <param name="Line">Number of the line in the reading, from 0.</param>
/// <param name="Tallest">Height of the tallest letter on the metal, with its uncertainty: of a capital where the line has one.</param>
/// <param name="Median">Median height of the line's letters.</param>
/// <param name="FromEnd">Distance of the lettering's nearer side from the end of the tube that the photo shows, along the tube; null where neither end is in the photo.</param>
public sealed record LineSizes(int Line, Measured Tallest, Length Median, Measured? FromEnd);
