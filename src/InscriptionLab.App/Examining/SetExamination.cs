using System.Collections.Immutable;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using InscriptionLab.Gathering;
using InscriptionLab.Readings;
using InscriptionLab.Reliefs;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;

namespace InscriptionLab.App.Examining;

/// <summary>What several photos of one object gave when read together.</summary>
/// <param name="Kind">Why they belong together.</param>
/// <param name="Members">The photos' own examinations, in the order given.</param>
/// <param name="Reading">The joint reading; its quads lie in the photo that shows the letter best.</param>
/// <param name="Finding">What the joint reading is worth.</param>
internal sealed record SetExamination(SetKind Kind, ImmutableArray<Examination> Members, Reading Reading, Finding Finding)
{
    /// <summary>Gets the tube that the photos share, or that of the first one; null where there is none.</summary>
    internal Tube? Tube { get; init; }

    /// <summary>Gets what all that was seen is worth under three propositions.</summary>
    internal EvidenceReport Evidence { get; init; } = EvidenceReport.Empty;

    /// <summary>Gets what showed that the photos belong together, and what could not be told, as sentences.</summary>
    internal ImmutableArray<string> Reasons { get; init; } = [];

    /// <summary>Gets the strip that the photos of a turned tube were joined to, its views numbered as the members; null where there is none.</summary>
    internal TurnMosaic? Mosaic { get; init; }

    /// <summary>Gets the form of the surface that photos under several lamps told; null where there is none.</summary>
    internal SurfaceRelief? Relief { get; init; }
}
