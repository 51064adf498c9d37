using InscriptionLab.Imaging;

namespace InscriptionLab.Strips;

/// <summary>The visible surface of a tube laid flat: X along the axis, Y along the arc, equal scale in both.</summary>
/// <param name="Image">Grey levels of the strip.</param>
/// <param name="Map">Leads from strip pixels to photo pixels and back.</param>
/// <param name="PixelsPerDiameter">Strip pixels that one tube diameter covers; 0 for a flat strip.</param>
/// <param name="Unrolled">False where no tube was found and the strip is the photo itself.</param>
public sealed record Strip(GrayImage Image, StripMap Map, double PixelsPerDiameter, bool Unrolled);
