using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;

namespace InscriptionLab.References;

/// <summary>The columns of a reference list, for those who show or change its rows as text.</summary>
public static class ReferenceColumns
{
    /// <summary>Gets the names of all columns, in the order in which a list is written.</summary>
    public static ImmutableArray<string> All => ReferenceField.All;

    /// <summary>Gets the words that a column may hold, for each column that does not hold free text.</summary>
    public static ImmutableDictionary<string, ImmutableArray<string>> Words { get; } = new Dictionary<string, ImmutableArray<string>>
    {
        [ReferenceField.Status] = [.. ReferenceField.Statuses.Select(known => known.Word)],
        [ReferenceField.Style] = ReferenceField.Styles,
        [ReferenceField.SignatureDirection] = [.. ReferenceField.Directions.Select(known => known.Word)],
        [ReferenceField.Layout] = [.. ReferenceField.Layouts.Select(known => known.Word)],
        [ReferenceField.Certainty] = [.. ReferenceField.Certainties.Select(known => known.Word)],
    }.ToImmutableDictionary();

    /// <summary>Gives a row as the text of each column, empty where it holds nothing.</summary>
    /// <param name="form">The row.</param>
    public static ImmutableArray<string> Of(ReferenceForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        var fields = ReferenceFieldText.Of(form).ToDictionary(field => field.Field, field => field.Text, StringComparer.Ordinal);
        return [.. All.Select(column => fields.GetValueOrDefault(column, string.Empty))];
    }
}
