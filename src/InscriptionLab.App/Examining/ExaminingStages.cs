using System;
using System.Collections.Immutable;
using System.Threading;
using InscriptionLab.Advice;
using InscriptionLab.Comparison;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Readings;
using InscriptionLab.Sizes;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;

namespace InscriptionLab.App.Examining;

/// <summary>The stages of an examination as functions, so that the flow can be read and tested without pixels. <see cref="Composition"/> fills them with the real ones.</summary>
/// <param name="Open">File to photo; throws one sentence for a file that cannot be used.</param>
/// <param name="FindTubes">Photo to tubes, the likeliest first; none only where a person marked something else.</param>
/// <param name="Unroll">Photo and tube to strip.</param>
/// <param name="LayFlat">Photo to a strip that is the photo itself, for where there is no tube.</param>
/// <param name="Read">Photo and strip to lines of letters.</param>
/// <param name="Compare">Reading to the nearest forms of the reference list.</param>
/// <param name="Judge">Comparison to finding.</param>
/// <param name="Advise">Photo, tube and reading to what limits the photo.</param>
internal sealed record ExaminingStages(
    Func<string, Photo> Open,
    Func<Photo, CancellationToken, Outcome<ImmutableArray<Tube>>> FindTubes,
    Func<Photo, Tube, CancellationToken, Strip> Unroll,
    Func<Photo, CancellationToken, Strip> LayFlat,
    Func<Photo, Strip, CancellationToken, Reading> Read,
    Func<Reading, ReadingComparison> Compare,
    Func<ReadingComparison, Finding> Judge,
    Func<Photo, Tube?, Reading, CancellationToken, PhotoAdvice> Advise)
{
    /// <summary>Gets reading, finding and what else is known of the piece to the weighing under three propositions; nothing is weighed where it is not filled.</summary>
    internal Func<Reading, Finding, Circumstances, EvidenceReport> Weigh { get; init; } = (_, _, _) => EvidenceReport.Empty;

    /// <summary>Gets photo to the flat face of a ring; null where none is looked for.</summary>
    internal Func<Photo, CancellationToken, Outcome<RingFace>>? FindRing { get; init; }

    /// <summary>Gets photo, ring and where it is cut open to strip; without a cut the strip goes on past a full turn.</summary>
    internal Func<Photo, RingFace, RingCut?, Strip> UnrollRing { get; init; } = (_, _, _) => throw new InvalidOperationException("No ring was to be found.");

    /// <summary>Gets photo, tube and reading to sizes in millimetres; null where there is no scale.</summary>
    internal Func<Photo, Tube, Reading, CancellationToken, TubeSizes?> Size { get; init; } = (_, _, _, _) => null;

    /// <summary>Gets a value indicating whether a person marked a ring, so that it is laid flat whatever else is lettered.</summary>
    internal bool RingIsMarked { get; init; }

    /// <summary>Gets a value indicating whether a person marked the tube, so that it is laid flat wherever the lettering seems to lie.</summary>
    internal bool TubesAreMarked { get; init; }
}
