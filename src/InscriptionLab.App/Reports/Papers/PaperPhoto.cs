using System.Collections.Immutable;

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

    /// <summary>Gets what else is to be borne in mind.</summary>
    internal ImmutableArray<string> Warnings { get; init; } = [];

    /// <summary>Gets what persons did, one sentence each.</summary>
    internal ImmutableArray<string> Hands { get; init; } = [];

    /// <summary>Gets what made the results: program, models, list, time.</summary>
    internal ImmutableArray<(string Name, string Value)> Versions { get; init; } = [];
}
