using InscriptionLab.Measures;

namespace InscriptionLab.Strips;

/// <summary>A point of one photo of a set. The default value is the top-left pixel of the first photo.</summary>
/// <param name="PhotoIndex">Place of the photo in the set, from 0.</param>
/// <param name="Point">Point in that photo.</param>
public readonly record struct TurnPoint(int PhotoIndex, PixelPoint Point);
