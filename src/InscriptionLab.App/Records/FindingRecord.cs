using System.Collections.Immutable;

namespace InscriptionLab.App.Records;

/// <summary>The finding.</summary>
/// <param name="Outcome">agrees, differs, undecided or nothing-read.</param>
/// <param name="Nearest">Nearest attested forms, nearest first.</param>
/// <param name="Reasons">Plain sentences.</param>
internal sealed record FindingRecord(string Outcome, ImmutableArray<NearestRecord> Nearest, ImmutableArray<string> Reasons);
