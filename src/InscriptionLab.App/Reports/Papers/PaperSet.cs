using System.Collections.Immutable;
using InscriptionLab.App.Records;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>What several photos of one object gave together.</summary>
/// <param name="Title">How many photos, and why they belong together.</param>
/// <param name="Photos">Names of the photos.</param>
internal sealed record PaperSet(string Title, ImmutableArray<string> Photos)
{
    /// <summary>Gets why the photos belong together, and what could not be told.</summary>
    internal ImmutableArray<string> Reasons { get; init; } = [];

    /// <summary>Gets the joined strip or the form of the surface; empty where the photos are not at hand.</summary>
    internal ImmutableArray<PaperPicture> Pictures { get; init; } = [];

    internal ImmutableArray<PaperLine> Lines { get; init; } = [];

    /// <summary>Gets what persons read in the joint reading, as sentences.</summary>
    internal ImmutableArray<string> Hands { get; init; } = [];

    /// <summary>Gets the finding over the joint reading; null where nothing was compared.</summary>
    internal PaperFinding? Finding { get; init; }

    internal EvidenceRecord? Evidence { get; init; }
}
