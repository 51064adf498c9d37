using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace InscriptionLab.App.Records;

/// <summary>The finding.</summary>
/// <param name="Outcome">agrees, differs, undecided or nothing-read.</param>
/// <param name="Nearest">Nearest attested forms, nearest first.</param>
/// <param name="Reasons">Plain sentences.</param>
internal sealed record FindingRecord(string Outcome, ImmutableArray<NearestRecord> Nearest, ImmutableArray<string> Reasons)
{
    /// <summary>Gets the weighing under three propositions; left out where nothing speaks.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public EvidenceRecord? Evidence { get; init; }
}
