using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using CsvHelper;

namespace InscriptionLab.References;

/// <summary>Cuts a CSV file (RFC 4180, comma or semicolon) into rows. Rows are counted as a spreadsheet does: the header is row 1.</summary>
internal sealed class CsvReferenceRows(ReferenceFaults faults, FieldNames fields, bool warnsOfOthers = true)
{
    private const char Quote = '"';

    internal IReadOnlyList<ReferenceRow> Cut(string text)
    {
        var misquoted = new Dictionary<long, CsvMalformedReason>();
        var delimiter = DelimiterOf(text);
        var options = CsvReaderOptions.Default with
        {
            Separator = delimiter,
            HasHeader = false,
            SkipEmptyLines = false,
            OnMalformedRecord = found => misquoted.TryAdd(found.RecordNumber, found.Reason),
        };
        using var reader = CsvReader.FromText(text, options);
        if (!reader.Read())
        {
            throw faults.Unreadable($"is empty; the first row must name the columns {string.Join(", ", fields.Required)}.");
        }

        var header = Header(Record(reader));
        var rows = new List<ReferenceRow>();
        while (reader.Read())
        {
            var place = PlaceOf(reader.RowNumber);
            var record = Record(reader);
            if (misquoted.TryGetValue(reader.RowNumber, out var reason) && reason is not CsvMalformedReason.StrayQuote)
            {
                faults.Error(place, reason == CsvMalformedReason.UnterminatedQuote
                    ? "a quotation mark is opened in this row and never closed."
                    : "text follows a closing quotation mark; inside a quoted field write a quotation mark twice.");
            }
            else if (record.Skip(header.Count).Any(value => !string.IsNullOrWhiteSpace(value)))
            {
                faults.Error(place, string.Create(CultureInfo.InvariantCulture, $"has {record.Length} fields, but the header names {header.Count}; put quotation marks round a field that holds a '{delimiter}'."));
            }
            else if (!record.All(string.IsNullOrWhiteSpace))
            {
                rows.Add(new ReferenceRow(place, Values(header, record)));
            }
        }

        return rows;
    }

    private static string[] Record(CsvReader reader) => [.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetString)];

    private static string PlaceOf(long row) => string.Create(CultureInfo.InvariantCulture, $"row {row}");

    /// <summary>The delimiter is whichever of the two the header row holds more often outside quotation marks.</summary>
    private static char DelimiterOf(string text)
    {
        int commas = 0, semicolons = 0;
        var isQuoted = false;
        foreach (var character in text)
        {
            if (character == Quote)
            {
                isQuoted = !isQuoted;
            }
            else if (!isQuoted && character is '\n' or '\r')
            {
                break;
            }
            else if (!isQuoted)
            {
                commas += character == ',' ? 1 : 0;
                semicolons += character == ';' ? 1 : 0;
            }
        }

        return semicolons > commas ? ';' : ',';
    }

    private List<string> Header(string[] headings)
    {
        var header = new List<string>();
        foreach (var heading in headings)
        {
            var field = fields.Meant(heading);
            if (field.Length > 0 && header.Contains(field))
            {
                faults.HeaderError(PlaceOf(1), $"names the column {field} twice.");
            }
            else if (warnsOfOthers && field.Length > 0 && !fields.All.Contains(field))
            {
                faults.Warn($"the column '{heading.Trim()}' is not known and is not used; known are {string.Join(", ", fields.All)}.");
            }

            header.Add(field);
        }

        foreach (var missing in fields.Required.Where(required => !header.Contains(required)))
        {
            faults.HeaderError(PlaceOf(1), $"the column {missing} is missing; found {string.Join(", ", headings.Select(heading => $"'{heading.Trim()}'"))}.");
        }

        return header;
    }

    private static Dictionary<string, string> Values(List<string> header, string[] record)
    {
        var values = ReferenceRow.NewValues();
        for (var index = 0; index < header.Count && index < record.Length; index++)
        {
            if (record[index].Length > 0)
            {
                values.TryAdd(header[index], record[index]);
            }
        }

        return values;
    }
}
