using System.Collections.Immutable;
using InscriptionLab.Measures;

namespace InscriptionLab.Evidence;

/// <summary>What is known of a piece beside the reading of one photo.</summary>
public sealed record Circumstances
{
    /// <summary>Gets circumstances of which nothing is known.</summary>
    public static Circumstances None { get; } = new();

    /// <summary>Gets what a person recorded of the piece; null where nothing.</summary>
    public ConstructionRecord? Construction { get; init; }

    /// <summary>Gets the odds before the evidence, which are the user's; null where none were given, and then no probability is stated.</summary>
    public PriorOdds? Prior { get; init; }

    /// <summary>Gets whether the lettering runs round the tube; null where the photo shows no tube.</summary>
    public bool? RunsAround { get; init; }

    /// <summary>Gets the height of the tallest letter of each line of the reading, by the line's number, where a scale beside the tube gives it.</summary>
    public ImmutableDictionary<int, Measured> LetterHeights { get; init; } = ImmutableDictionary<int, Measured>.Empty;

    /// <summary>Gets the houses that other photos of the piece name letter by letter.</summary>
    public ImmutableArray<string> HousesInOtherPhotos { get; init; } = [];
}
