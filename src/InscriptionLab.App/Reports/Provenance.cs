using System;
using System.Collections.Immutable;

namespace InscriptionLab.App.Reports;

/// <summary>Where an examination comes from, so that it can be repeated.</summary>
/// <param name="Program">Name and version of the program.</param>
/// <param name="Made">When it was made.</param>
/// <param name="List">Name of the reference list.</param>
/// <param name="ListSha256">SHA-256 of the list's file.</param>
/// <param name="Models">Models and their hashes.</param>
/// <param name="Asked">The command line's options, as the user wrote them.</param>
/// <param name="Stages">Every stage's options.</param>
internal sealed record Provenance(
    string Program,
    DateTimeOffset Made,
    string List,
    string ListSha256,
    ImmutableArray<ModelFact> Models,
    ImmutableArray<string> Asked,
    ImmutableArray<StageOptions> Stages);
