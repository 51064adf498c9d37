using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>The face of a ring in the photo. An ellipse is its centre, its longer and shorter half axis in pixels, and the direction of the longer one in degrees.</summary>
/// <param name="Rim">Its rim.</param>
/// <param name="Opening">How far in it was laid flat.</param>
/// <param name="Share">Radius of the opening as a share of the rim's.</param>
/// <param name="By">The person who drew it; null where the program found it.</param>
internal sealed record RingAnswer(ImmutableArray<double> Rim, ImmutableArray<double> Opening, double Share, HandAnswer? By);
