using System.Collections.Immutable;
using InscriptionLab.Measures;

namespace InscriptionLab.Strips;

/// <summary>The flat face of a ring as it lies in the photo: two concentric circles of one plane, and the band between them.</summary>
/// <param name="Outer">Image of its outer rim.</param>
/// <param name="Inner">Image of its opening, or of the circle down to which a face without an opening is looked at.</param>
/// <param name="Marked">True where a person marked it.</param>
/// <param name="Notes">Sentences for the user: what was assumed.</param>
public sealed record RingFace(PixelEllipse Outer, PixelEllipse Inner, bool Marked, ImmutableArray<string> Notes)
{
    /// <summary>Gets the plane that the two circles span.</summary>
    public RingPlane Plane => new(Outer, Inner);
}
