using System;
using System.Collections.Generic;
using System.Data.Common;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using InscriptionLab.Outcomes;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Storage;

namespace InscriptionLab.Cataloguing;

/// <summary>The whole catalogue as one text file: a head, one JSON object a row, a foot with the count. Nothing is lost, whichever database it came from or goes to.</summary>
public sealed class Archive
{
    private const string Format = "inscriptionlab-catalogue-1";

    private static readonly string[] Tables =
        ["objects", "photos", "examinations", "lines", "marks", "nearest_forms", "measurements", "corrections", "observations", "pictures", "changes", "refusals"];

    private readonly Func<CatalogueContext> _newContext;

    internal Archive(Func<CatalogueContext> newContext) => _newContext = newContext;

    /// <summary>Writes the catalogue.</summary>
    /// <returns>How many rows were written.</returns>
    public long Export(TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(writer);
        using var context = _newContext();
        using var transaction = context.Database.BeginTransaction();
        writer.WriteLine(new JsonObject { ["format"] = Format }.ToJsonString());
        long rows = 0;
        foreach (var table in Tables)
        {
            var columns = ColumnsOf(context, table);
            using var command = Command(transaction, $"SELECT {string.Join(", ", columns.Select(column => column.Name))} FROM {table} ORDER BY id");
            using var reader = command.ExecuteReader();
            while (reader.Read())
            {
                writer.WriteLine(LineOf(table, columns, reader));
                rows++;
            }
        }

        writer.WriteLine(new JsonObject { ["end"] = rows }.ToJsonString());
        return rows;
    }

    /// <summary>Reads a catalogue into this one, which must be empty; all of it or nothing.</summary>
    /// <returns>How many rows were read.</returns>
    /// <exception cref="InscriptionLabException">The catalogue is not empty, or the text is cut off or none of ours.</exception>
    public long Import(TextReader reader)
    {
        ArgumentNullException.ThrowIfNull(reader);
        using var context = _newContext();
        using var transaction = context.Database.BeginTransaction();
        if (context.Objects.Any() || context.Refusals.Any() || context.Changes.Any())
        {
            throw new InscriptionLabException("The catalogue is not empty: import into a new one.");
        }

        try
        {
            var rows = ReadRows(context, transaction, reader);
            if (context.Database.ProviderName!.Contains("Npgsql", StringComparison.Ordinal))
            {
                ContinueNumbers(transaction);
            }

            transaction.Commit();
            return rows;
        }
        catch (Exception problem) when (problem is JsonException or FormatException or InvalidOperationException or DbException or KeyNotFoundException or ArgumentException or InscriptionLabException)
        {
            throw new InscriptionLabException("The file is not a catalogue that was exported whole: export it again.", problem);
        }
    }

    private static long ReadRows(CatalogueContext context, IDbContextTransaction transaction, TextReader reader)
    {
        if ((string?)Row(reader.ReadLine() ?? string.Empty)["format"] != Format)
        {
            throw new FormatException("The head is missing.");
        }

        var columns = Tables.ToDictionary(table => table, table => ColumnsOf(context, table), StringComparer.Ordinal);
        long rows = 0;
        while (reader.ReadLine() is { } line)
        {
            var row = Row(line);
            if (row["end"] is { } end)
            {
                return (long)end == rows ? rows : throw new FormatException("Rows are missing.");
            }

            var table = (string?)row["table"] ?? throw new FormatException("A row names no table.");
            ArchiveRow.Check(table, row);
            Insert(transaction, table, columns[table], row);
            rows++;
        }

        throw new FormatException("The foot is missing.");
    }

    private static JsonObject Row(string line) => JsonNode.Parse(line) as JsonObject ?? throw new FormatException("A line is no row.");

    private static string LineOf(string table, IReadOnlyList<(string Name, Type Type)> columns, DbDataReader reader)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer))
        {
            json.WriteStartObject();
            json.WriteString("table", table);
            for (var index = 0; index < columns.Count; index++)
            {
                json.WritePropertyName(columns[index].Name);
                Write(json, reader, index, columns[index].Type);
            }

            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.ToArray());
    }

    private static void Write(Utf8JsonWriter json, DbDataReader reader, int index, Type type)
    {
        if (reader.IsDBNull(index))
        {
            json.WriteNullValue();
        }
        else if (type == typeof(byte[]))
        {
            json.WriteBase64StringValue((byte[])reader.GetValue(index));
        }
        else if (type == typeof(string))
        {
            json.WriteStringValue(reader.GetString(index));
        }
        else if (type == typeof(double))
        {
            json.WriteNumberValue(reader.GetDouble(index));
        }
        else
        {
            json.WriteNumberValue(reader.GetInt64(index));
        }
    }

    private static void Insert(IDbContextTransaction transaction, string table, IReadOnlyList<(string Name, Type Type)> columns, JsonObject row)
    {
        using var command = Command(
            transaction,
            $"INSERT INTO {table} ({string.Join(", ", columns.Select(column => column.Name))}) VALUES ({string.Join(", ", columns.Select(column => "@" + column.Name))})");
        foreach (var (name, type) in columns)
        {
            var parameter = command.CreateParameter();
            parameter.ParameterName = name;
            parameter.Value = ValueOf(row[name], type);
            command.Parameters.Add(parameter);
        }

        command.ExecuteNonQuery();
    }

    private static object ValueOf(JsonNode? node, Type type)
    {
        if (node is null)
        {
            return DBNull.Value;
        }

        return type == typeof(byte[]) ? node.AsValue().GetValue<JsonElement>().GetBytesFromBase64()
            : type == typeof(string) ? (string)node!
            : type == typeof(double) ? (double)node
            : (object)(long)node;
    }

    private static void ContinueNumbers(IDbContextTransaction transaction)
    {
        foreach (var table in Tables)
        {
            using var command = Command(transaction, $"SELECT setval(pg_get_serial_sequence('{table}', 'id'), GREATEST((SELECT MAX(id) FROM {table}), 1), (SELECT MAX(id) FROM {table}) IS NOT NULL)");
            command.ExecuteScalar();
        }
    }

    private static IReadOnlyList<(string Name, Type Type)> ColumnsOf(CatalogueContext context, string table)
    {
        var entity = context.Model.GetEntityTypes().Single(type => type.GetTableName() == table);
        return [.. entity.GetProperties().Select(property => (property.GetColumnName(), TypeOf(property))).OrderBy(column => column.Item1, StringComparer.Ordinal)];
    }

    private static Type TypeOf(IProperty property)
    {
        var type = property.GetTypeMapping().Converter?.ProviderClrType ?? property.ClrType;
        return Nullable.GetUnderlyingType(type) ?? type;
    }

    private static DbCommand Command(IDbContextTransaction transaction, string sql)
    {
        var open = transaction.GetDbTransaction();
        var command = open.Connection!.CreateCommand();
        command.Transaction = open;
#pragma warning disable CA2100 // Table and column names are this program's own.
        command.CommandText = string.Create(CultureInfo.InvariantCulture, $"{sql}");
#pragma warning restore CA2100
        return command;
    }
}
