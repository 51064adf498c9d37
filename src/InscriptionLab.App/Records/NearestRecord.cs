using System.Collections.Immutable;

namespace InscriptionLab.App.Records;

/// <summary>One form near to the reading.</summary>
/// <param name="Form">The form as the list spells it.</param>
/// <param name="Maker">The house.</param>
/// <param name="Status">attested, period-copy or reproduction.</param>
/// <param name="Differences">Every letter that differs.</param>
internal sealed record NearestRecord(string Form, string Maker, string Status, ImmutableArray<DifferenceRecord> Differences);
