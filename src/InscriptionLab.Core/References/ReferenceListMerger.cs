using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;

namespace InscriptionLab.References;

/// <summary>
/// Puts rows into a list. A row of the same form, maker and status is the same row where no field contradicts: what one lacks the other fills.
/// Where a field contradicts, both rows stay, since two sources may both be right, and the contradiction is told.
/// </summary>
public static class ReferenceListMerger
{
    /// <summary>Merges.</summary>
    /// <param name="into">Rows of the list, which keep their order.</param>
    /// <param name="rows">Rows to be put in.</param>
    public static MergedReferences Merge(ImmutableArray<ReferenceForm> into, ImmutableArray<ReferenceForm> rows)
    {
        var merged = into.ToList();
        var places = merged.Select((form, index) => (Key: KeyOf(form), index)).GroupBy(pair => pair.Key, pair => pair.index).ToDictionary(group => group.Key, group => group.ToList());
        var changes = ImmutableArray.CreateBuilder<ReferenceChange>();
        var contradictions = ImmutableArray.CreateBuilder<string>();
        var alike = 0;
        foreach (var row in rows)
        {
            var known = places.GetValueOrDefault(KeyOf(row)) ?? [];
            var same = known.FirstOrDefault(index => Contradictions(merged[index], row).Length == 0, -1);
            if (same < 0)
            {
                contradictions.AddRange(known.Take(1).Select(index => string.Create(CultureInfo.InvariantCulture, $"'{row.Form}' of {row.Maker}: {string.Join(", ", Contradictions(merged[index], row))} differs from row {index + 2}; both rows are kept.")));
                merged.Add(row);
                places[KeyOf(row)] = [.. known, merged.Count - 1];
                changes.Add(new ReferenceChange(null, row));
                continue;
            }

            var filled = Filled(merged[same], row);
            if (filled == merged[same])
            {
                alike++;
                continue;
            }

            changes.Add(new ReferenceChange(merged[same], filled));
            merged[same] = filled;
        }

        return new MergedReferences([.. merged], changes.ToImmutable(), contradictions.ToImmutable(), alike);
    }

    private static (string, string, AttestationStatus) KeyOf(ReferenceForm form) => (form.Form, form.Maker, form.Status);

    private static string[] Contradictions(ReferenceForm first, ReferenceForm second)
    {
        var fields = ReferenceFieldText.Of(first).ToDictionary(field => field.Field, field => field.Text, StringComparer.Ordinal);
        return [.. ReferenceFieldText.Of(second).Where(field => fields.TryGetValue(field.Field, out var text) && text != field.Text).Select(field => field.Field)];
    }

    private static ReferenceForm Filled(ReferenceForm form, ReferenceForm with) => form with
    {
        Style = form.Style ?? with.Style,
        Address = form.Address ?? with.Address,
        From = form.From ?? with.From,
        To = form.To ?? with.To,
        Source = form.Source ?? with.Source,
        Note = form.Note ?? with.Note,
        SignaturePosition = form.SignaturePosition ?? with.SignaturePosition,
        SignatureDirection = form.SignatureDirection ?? with.SignatureDirection,
        Layout = form.Layout ?? with.Layout,
        Certainty = form.Certainty ?? with.Certainty,
        Partners = form.Partners ?? with.Partners,
        SuccessorOf = form.SuccessorOf ?? with.SuccessorOf,
        Wording = form.Wording ?? with.Wording,
        LetterHeight = form.LetterHeight ?? with.LetterHeight,
        LetterSpacing = form.LetterSpacing ?? with.LetterSpacing,
    };
}
