using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Outcomes;

namespace InscriptionLab.References;

/// <summary>Reads rows of a list from somebody's CSV by a mapping. Errors name their rows and columns as the list's own reader does.</summary>
/// <param name="mapping">The mapping.</param>
/// <param name="options">Bounds; null for the defaults.</param>
public sealed class TableImport(ImportMapping mapping, ReferenceListReaderOptions? options = null)
{
    private const int DigitsOfYear = 4;

    private readonly ReferenceListReaderOptions _options = options ?? new ReferenceListReaderOptions();

    /// <summary>Reads.</summary>
    /// <param name="file">Name of the file, for messages.</param>
    /// <param name="content">CSV, UTF-8.</param>
    /// <exception cref="InscriptionLabException">A column of the mapping is missing, or rows are wrong.</exception>
    public ImmutableArray<ReferenceForm> Read(string file, ReadOnlySpan<byte> content)
    {
        var faults = new ReferenceFaults(file, "field");
        ImmutableArray<string> headings = [.. mapping.Columns.Values.Select(Plain).Distinct()];
        var rows = new CsvReferenceRows(faults, new FieldNames(headings, headings), warnsOfOthers: false).Cut(Utf8Text.Of(file, content));
        faults.ThrowIfAny(_options.MaximumErrors);
        var forms = new ReferenceFormParser(_options, faults).Parse(rows.Select(Mapped));
        faults.ThrowIfAny(_options.MaximumErrors);
        return forms;
    }

    private ReferenceRow Mapped(ReferenceRow row)
    {
        var values = ReferenceRow.NewValues();
        foreach (var (field, text) in mapping.Constants)
        {
            values[field] = text;
        }

        foreach (var (field, heading) in mapping.Columns)
        {
            if (row.Trimmed(Plain(heading)) is { } text)
            {
                var word = mapping.Words.GetValueOrDefault(field)?.GetValueOrDefault(text) ?? text;
                values[field] = ReferenceField.Years.Contains(field) ? Year(word) : word;
            }
        }

        return new ReferenceRow(row.Place, values);
    }

    private static string Plain(string heading) => new FieldNames([], []).Meant(heading);

    /// <summary>The first four digits together: 1788-01-01, "about 1788".</summary>
    private static string Year(string text)
    {
        var digits = Enumerable.Range(0, text.Length).Where(at => at == 0 || !char.IsAsciiDigit(text[at - 1]))
            .Select(at => string.Concat(text.Skip(at).TakeWhile(char.IsAsciiDigit)))
            .FirstOrDefault(run => run.Length == DigitsOfYear);
        return digits ?? text;
    }
}
