using System.Collections.Immutable;
using InscriptionLab.Advice;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using InscriptionLab.Photos;
using InscriptionLab.Readings;
using InscriptionLab.Sizes;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;

namespace InscriptionLab.App.Examining;

/// <summary>Everything that one photo gave.</summary>
/// <param name="Photo">The photo.</param>
/// <param name="Tube">The tube; null where none was found, and then <paramref name="Warnings"/> says why.</param>
/// <param name="Strip">The surface laid flat; the photo itself where no tube was found.</param>
/// <param name="Reading">What was read.</param>
/// <param name="Finding">What it is worth.</param>
/// <param name="Advice">What limits the photo and how to take a better one.</param>
/// <param name="Warnings">Sentences for the user: what was assumed, what could not be told.</param>
/// <param name="Times">How long each stage took.</param>
internal sealed record Examination(
    Photo Photo,
    Tube? Tube,
    Strip Strip,
    Reading Reading,
    Finding Finding,
    PhotoAdvice Advice,
    ImmutableArray<string> Warnings,
    ImmutableArray<StageTime> Times)
{
    /// <summary>Gets the ring whose face was laid flat and read; null where no lettering runs round one.</summary>
    internal RingFace? Ring { get; init; }

    /// <summary>Gets sizes of tube and lettering in millimetres; null where no scale lies beside the tube.</summary>
    internal TubeSizes? Sizes { get; init; }

    /// <summary>Gets what all that was seen is worth under three propositions.</summary>
    internal EvidenceReport Evidence { get; init; } = EvidenceReport.Empty;
}
