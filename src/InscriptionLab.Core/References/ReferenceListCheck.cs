using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;

namespace InscriptionLab.References;

/// <summary>Looks through a list that can be read for what a careful compiler would want to know.</summary>
public static class ReferenceListCheck
{
    private const int MostNamed = 10;

    /// <summary>Gives remarks, a sentence each; empty where there is nothing to say.</summary>
    /// <param name="list">The list.</param>
    public static ImmutableArray<string> Remarks(ReferenceList list)
    {
        ArgumentNullException.ThrowIfNull(list);
        var rows = list.Forms.Select((form, index) => (Form: form, Row: index + 2)).ToArray();
        var makers = list.Forms.Select(form => form.Maker).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. Named("Without a source", rows.Where(row => row.Form.Source is null)),
            .. Named("Attested, without saying how certain", rows.Where(row => row.Form is { Certainty: null, Status: AttestationStatus.Attested })),
            .. Named("Attested without years, so that they date nothing", rows.Where(row => row.Form is { From: null, To: null, Status: AttestationStatus.Attested })),
            .. Named("The house in successor_of has no rows", rows.Where(row => row.Form.SuccessorOf is { } before && !makers.Contains(before))),
            .. Named("Begins before the house that it succeeds", rows.Where(row => row.Form is { SuccessorOf: { } before, From: { } from } && list.Forms.Where(form => form.Maker == before).Min(form => form.From) > from)),
            .. rows.GroupBy(row => row.Form.Form, StringComparer.Ordinal).SelectMany(Shared),
        ];
    }

    private static IEnumerable<string> Named(string what, IEnumerable<(ReferenceForm Form, int Row)> found)
    {
        var rows = found.ToArray();
        if (rows.Length > 0)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"{what}: {(rows.Length == 1 ? "row" : "rows")} {string.Join(", ", rows.Take(MostNamed).Select(row => row.Row))}{(rows.Length > MostNamed ? " and more" : string.Empty)}.");
        }
    }

    private static IEnumerable<string> Shared(IGrouping<string, (ReferenceForm Form, int Row)> rows)
    {
        string[] makers = [.. rows.Where(row => row.Form.Status == AttestationStatus.Attested).Select(row => row.Form.Maker).Distinct()];
        if (makers.Length > 1)
        {
            yield return $"The form '{rows.Key}' is attested for {string.Join(" and ", makers)}: it cannot tell them apart.";
        }

        if (makers.Length > 0 && rows.FirstOrDefault(row => row.Form.Status != AttestationStatus.Attested) is { Form: not null } other)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"The form '{rows.Key}' is attested and, in row {other.Row}, listed as a copy: the spelling cannot tell which.");
        }

        foreach (var same in rows.GroupBy(row => row.Form).Where(same => same.Count() > 1))
        {
            yield return $"The form '{rows.Key}' stands in full in rows {string.Join(" and ", same.Select(row => row.Row.ToString(CultureInfo.InvariantCulture)))}.";
        }
    }
}
