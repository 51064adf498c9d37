using InscriptionLab.Measures;

namespace InscriptionLab.Strips;

/// <summary>Where one photo of a turned tube stands in the strip all the way round.</summary>
/// <param name="PhotoIndex">Place of the photo in the set, from 0.</param>
/// <param name="Turn">Angle by which the tube was turned since the photo from which turns are counted; positive turns carry what faces the camera toward the lower side of the picture of a tube that runs to the right.</param>
/// <param name="AxialShift">How far the tube moved along its axis since that photo, in radii.</param>
/// <param name="Agreement">Correlation of the details that this photo and another both show, the best of all others, -1 to 1.</param>
/// <param name="Map">Leads from the pixels of the whole strip to this photo.</param>
public sealed record TurnView(int PhotoIndex, Angle Turn, double AxialShift, double Agreement, CylinderStripMap Map);
