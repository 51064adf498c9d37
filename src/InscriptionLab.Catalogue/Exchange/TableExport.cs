using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text.Json.Nodes;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.Files;
using InscriptionLab.Tables;
using Parquet;
using Parquet.Schema;

namespace InscriptionLab.Exchange;

/// <summary>The catalogue's tables as CSV with a Frictionless data package (each table with its schema), and as Apache Parquet.</summary>
internal static class TableExport
{
    private const int GroupRows = 10000;

    /// <summary>Writes the CSV files and <c>datapackage.json</c>.</summary>
    internal static void WriteCsv(string folder, IEnumerable<ExchangeObject> objects)
    {
        var tables = ExchangeTable.Of(objects);
        foreach (var table in tables)
        {
            WholeFile.Write(Path.Combine(folder, table.Name + ".csv"), writer =>
            {
                CsvTable.WriteRow(writer, table.Columns.Select(column => column.Name));
                foreach (var row in table.Rows)
                {
                    CsvTable.WriteRow(writer, row);
                }
            });
        }

        WholeFile.Write(Path.Combine(folder, "datapackage.json"), ExchangeText.Json(Package(tables)));
    }

    /// <summary>Writes one Parquet file for each table.</summary>
    internal static async Task WriteParquetAsync(string folder, IEnumerable<ExchangeObject> objects, CancellationToken cancel)
    {
        foreach (var table in ExchangeTable.Of(objects))
        {
            var fields = table.Columns.Select(Field).ToArray();
            using var stream = File.Create(Path.Combine(folder, table.Name + ".parquet"));
            await using var writer = await ParquetWriter.CreateAsync(new ParquetSchema(fields), stream, cancellationToken: cancel).ConfigureAwait(false);
            foreach (var group in table.Rows.Chunk(GroupRows))
            {
                using var part = writer.CreateRowGroup();
                for (var column = 0; column < fields.Length; column++)
                {
                    await WriteAsync(part, fields[column], table.Columns[column], [.. group.Select(row => row[column])], cancel).ConfigureAwait(false);
                }
            }
        }
    }

    private static DataField Field(ExchangeColumn column) => column.Type switch
    {
        "integer" when !column.Required => new DataField<int?>(column.Name),
        "integer" => new DataField<int>(column.Name, nullable: false),
        "number" => new DataField<double>(column.Name, nullable: false),
        _ => new DataField<string>(column.Name, nullable: false),
    };

    private static async Task WriteAsync(ParquetRowGroupWriter part, DataField field, ExchangeColumn column, ImmutableArray<string> values, CancellationToken cancel)
    {
        switch (column.Type)
        {
            case "integer" when !column.Required:
                await part.WriteAsync<int>(field, values.Select(value => value.Length == 0 ? (int?)null : int.Parse(value, CultureInfo.InvariantCulture)).ToArray(), cancellationToken: cancel).ConfigureAwait(false);
                break;
            case "integer":
                await part.WriteAsync<int>(field, values.Select(value => int.Parse(value, CultureInfo.InvariantCulture)).ToArray(), cancellationToken: cancel).ConfigureAwait(false);
                break;
            case "number":
                await part.WriteAsync<double>(field, values.Select(value => double.Parse(value, CultureInfo.InvariantCulture)).ToArray(), cancellationToken: cancel).ConfigureAwait(false);
                break;
            default:
                await part.WriteAsync(field, values).ConfigureAwait(false);
                break;
        }
    }

    private static JsonObject Package(IEnumerable<ExchangeTable> tables) => new()
    {
        ["name"] = "inscriptionlab-catalogue",
        ["profile"] = "tabular-data-package",
        ["resources"] = new JsonArray([.. tables.Select(table => new JsonObject
        {
            ["name"] = table.Name,
            ["path"] = table.Name + ".csv",
            ["profile"] = "tabular-data-resource",
            ["format"] = "csv",
            ["mediatype"] = "text/csv",
            ["encoding"] = "utf-8",
            ["schema"] = new JsonObject { ["fields"] = new JsonArray([.. table.Columns.Select(Described)]) },
        })]),
    };

    private static JsonObject Described(ExchangeColumn column)
    {
        var field = new JsonObject { ["name"] = column.Name, ["type"] = column.Type, ["description"] = column.Description };
        if (column.Required)
        {
            field["constraints"] = new JsonObject { ["required"] = true };
        }

        return field;
    }
}
