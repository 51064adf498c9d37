using System.Collections.Immutable;
using InscriptionLab.App.Records;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>One photo with what it gave.</summary>
internal sealed record PaperPhoto
{
    /// <summary>Gets the file's name.</summary>
    internal required string Name { get; init; }

    internal required string Sha256 { get; init; }

    internal required int Width { get; init; }

    internal required int Height { get; init; }

    /// <summary>Gets the photo with its marks, and after it the surface laid flat; empty where the file is not at hand.</summary>
    internal ImmutableArray<PaperPicture> Pictures { get; init; } = [];

    internal ImmutableArray<PaperLine> Lines { get; init; } = [];

    /// <summary>Gets the finding; null where nothing was compared.</summary>
    internal PaperFinding? Finding { get; init; }

    internal ImmutableArray<PaperMeasure> Measures { get; init; } = [];

    /// <summary>Gets the weighing under three propositions and the years; null where nothing speaks.</summary>
    internal EvidenceRecord? Evidence { get; init; }

    /// <summary>Gets what limits the photo; null where it was not judged.</summary>
    internal AdviceRecord? Advice { get; init; }

    /// <summary>Gets the face of the ring that was laid flat; null where there is none.</summary>
    internal RingRecord? Ring { get; init; }

    /// <summary>Gets sizes of tube and lettering in millimetres, in sentences; empty where no scale lies beside the tube.</summary>
    internal ImmutableArray<string> Sizes { get; init; } = [];

    /// <summary>Gets what follows from aperture and stop, each with its value and what it rests on; empty where too little is known.</summary>
    internal ImmutableArray<ImmutableArray<string>> Optics { get; init; } = [];

    /// <summary>Gets what is to be borne in mind with the optics.</summary>
    internal ImmutableArray<string> OpticsNotes { get; init; } = [];

    /// <summary>Gets what else is to be borne in mind.</summary>
    internal ImmutableArray<string> Warnings { get; init; } = [];

    /// <summary>Gets what persons did, one sentence each.</summary>
    internal ImmutableArray<string> Hands { get; init; } = [];

    /// <summary>Gets what made the results: program, models, list, time.</summary>
    internal ImmutableArray<(string Name, string Value)> Versions { get; init; } = [];
}
