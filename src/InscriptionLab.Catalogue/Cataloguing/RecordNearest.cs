using System.Collections.Immutable;
using System.Text.Json;

namespace InscriptionLab.Cataloguing;

/// <summary>One form near to a reading, as a record has it.</summary>
/// <param name="Form">The form as the list spells it.</param>
/// <param name="Maker">The house.</param>
/// <param name="Status">attested, period-copy or reproduction.</param>
/// <param name="DifferencesJson">The letters that differ, exactly as the record has them.</param>
public sealed record RecordNearest(string Form, string Maker, string Status, string DifferencesJson)
{
    /// <summary>Reads differences that were kept apart from their record.</summary>
    /// <exception cref="Outcomes.InscriptionLabException">They are none that this program writes.</exception>
    public static ImmutableArray<(string Attested, string Read, double Probability)> DifferencesOf(string json) => RecordContent.Array(json, difference =>
        (RecordContent.Text(difference, "attested"), RecordContent.Text(difference, "read"), RecordContent.Child(difference, "probability")?.GetDouble() ?? 0));

    internal static RecordNearest From(JsonElement nearest) => new(
        RecordContent.Text(nearest, "form"),
        RecordContent.Text(nearest, "maker"),
        RecordContent.Text(nearest, "status"),
        RecordContent.Child(nearest, "differences")?.GetRawText() ?? "[]");
}
