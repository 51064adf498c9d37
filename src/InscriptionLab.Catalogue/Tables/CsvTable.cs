using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using CsvHelper;

namespace InscriptionLab.Tables;

/// <summary>Writes and reads tables as comma-separated values (RFC 4180), line ends CR LF.</summary>
public static class CsvTable
{
    private const string LineEnd = "\r\n";
    private static readonly char[] Special = [',', '"', '\r', '\n'];

    /// <summary>Writes one row.</summary>
    public static void WriteRow(TextWriter writer, IEnumerable<string> values)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.Write(string.Join(',', values.Select(Quoted)));
        writer.Write(LineEnd);
    }

    /// <summary>Reads a whole table, the row of names first.</summary>
    public static ImmutableArray<ImmutableArray<string>> Read(string text)
    {
        using var reader = CsvReader.FromText(text, CsvReaderOptions.Default with { HasHeader = false });
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<string>>();
        while (reader.Read())
        {
            rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetString)]);
        }

        return rows.ToImmutable();
    }

    private static string Quoted(string value) => value.IndexOfAny(Special) < 0 ? value : "\"" + value.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";
}
