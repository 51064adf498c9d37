using System.Collections.Immutable;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>One object of a paper.</summary>
/// <param name="Key">Its name where it is kept.</param>
/// <param name="Title">What it is called; null where nobody said.</param>
/// <param name="Note">A person's note; null where there is none.</param>
/// <param name="OfferedAs">The name under which it is offered; null where unknown.</param>
/// <param name="Photos">Its photos.</param>
internal sealed record PaperObject(string Key, string? Title, string? Note, string? OfferedAs, ImmutableArray<PaperPhoto> Photos)
{
    /// <summary>Gets what photos gave together; empty where none were read together.</summary>
    internal ImmutableArray<PaperSet> Sets { get; init; } = [];

    /// <summary>Gets what persons saw of the construction: the question, and the answer with who gave it.</summary>
    internal ImmutableArray<(string Name, string Value)> Construction { get; init; } = [];

    /// <summary>Gets the photos to ask a seller for.</summary>
    internal ImmutableArray<string> Requests { get; init; } = [];

    /// <summary>A key that is a hash tells a reader nothing: the first photo's name does.</summary>
    internal string ShownTitle => Title ?? (Key.Length == Sha256Digits && Photos is [var first, ..] ? first.Name : Key);

    private const int Sha256Digits = 64;
}
