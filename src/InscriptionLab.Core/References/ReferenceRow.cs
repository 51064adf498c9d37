using System;
using System.Collections.Generic;

namespace InscriptionLab.References;

/// <summary>One row of a file before it is understood.</summary>
/// <param name="Place">How the user finds it: "row 7" (the header is row 1) or "form 4".</param>
/// <param name="Values">Text of each known field; a field that is absent or empty is not in it.</param>
internal sealed record ReferenceRow(string Place, IReadOnlyDictionary<string, string> Values)
{
    internal string? this[string field] => Values.TryGetValue(field, out var value) ? value : null;

    /// <summary>Gives the value without the spaces around it; null where empty.</summary>
    internal string? Trimmed(string field) => this[field]?.Trim() is { Length: > 0 } value ? value : null;

    internal static Dictionary<string, string> NewValues() => new(StringComparer.Ordinal);
}
