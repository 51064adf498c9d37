using System.Collections.Immutable;

namespace InscriptionLab.App.Records;

/// <summary>Several photos read together as one JSON object.</summary>
/// <param name="Set">raking or turns.</param>
/// <param name="Files">Names as given on the command line.</param>
/// <param name="Lines">The joint reading.</param>
/// <param name="Finding">The finding over the joint reading.</param>
internal sealed record SetRecord(
    string Set,
    ImmutableArray<string> Files,
    ImmutableArray<LineRecord> Lines,
    FindingRecord Finding);
