using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;
using System.Text.Json.Nodes;
using System.Threading.Tasks;
using AngleSharp.Html.Parser;
using DuckDB.NET.Data;
using InscriptionLab.Catalogue.Tests.Services;
using InscriptionLab.Tables;
using NJsonSchema;
using Xunit;

namespace InscriptionLab.Catalogue.Tests.Exchange;

/// <summary>Exports read by programs and held against schemas that others published.</summary>
public sealed class OutsideReadersTests : IDisposable
{
    private readonly ExportBench _bench = new();

    public void Dispose() => _bench.Dispose();

    [Fact]
    public async Task The_data_package_holds_against_its_published_profile()
    {
        await _bench.ExportAsync("csv", null);
        var profile = await JsonSchema.FromFileAsync(Vendored("tabular-data-package.json"), TestContext.Current.CancellationToken);
        var package = await File.ReadAllTextAsync(_bench.At("csv", "datapackage.json"), TestContext.Current.CancellationToken);

        Assert.Empty(profile.Validate(package));
        Assert.NotEmpty(profile.Validate(package.Replace("\"number\"", "\"length\"", StringComparison.Ordinal)));
        Assert.NotEmpty(profile.Validate(package.Replace("\"name\": \"lines\"", "\"name\": \"Lines of lettering\"", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Another_program_reads_the_csv_with_the_types_that_its_schema_states()
    {
        await _bench.ExportAsync("csv", null);
        var package = JsonNode.Parse(await File.ReadAllTextAsync(_bench.At("csv", "datapackage.json"), TestContext.Current.CancellationToken))!;

        foreach (var resource in package["resources"]!.AsArray())
        {
            var file = _bench.At("csv", (string)resource!["path"]!);
            var fields = resource["schema"]!["fields"]!.AsArray();
            var columns = string.Join(", ", fields.Select(field => $"'{field!["name"]}': '{SqlType((string)field["type"]!)}'"));
            var rows = await AskAsync($"SELECT * FROM read_csv('{file}', header = true, delim = ',', quote = '\"', escape = '\"', strict_mode = true, nullstr = '', columns = {{{columns}}})");
            var own = CsvTable.Read(await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken));

            Assert.Equal(own.Length - 1, rows.Count);
            Assert.All(rows.Zip(own.Skip(1)), pair => Assert.Equal(pair.Second, pair.First.Select(Written)));
            Assert.All(fields.Select((field, index) => (field, index)).Where(item => item.field!["constraints"] is not null), item => Assert.All(rows, row => Assert.NotNull(row[item.index])));
        }
    }

    /// <summary>The format of object detection in "COCO: data format" (cocodataset.org), which has no schema of its own: members and types as that page lists them, and what they must say of each other.</summary>
    [Fact]
    public async Task Another_program_reads_the_coco_file_by_the_published_list_of_members()
    {
        await _bench.ExportAsync("coco", null);
        var file = _bench.At("coco", "letters.json");
        var letters = $$"""
            WITH file AS (SELECT * FROM read_json('{{file}}', maximum_object_size = 100000000, columns = {
                info: 'STRUCT(description VARCHAR)',
                licenses: 'STRUCT(id INTEGER, name VARCHAR, url VARCHAR)[]',
                images: 'STRUCT(id INTEGER, width INTEGER, height INTEGER, file_name VARCHAR, license INTEGER)[]',
                annotations: 'STRUCT(id INTEGER, image_id INTEGER, category_id INTEGER, segmentation DOUBLE[][], area DOUBLE, bbox DOUBLE[], iscrowd INTEGER, score DOUBLE)[]',
                categories: 'STRUCT(id INTEGER, name VARCHAR, supercategory VARCHAR)[]'})),
            image AS (SELECT unnest(images, recursive := true) FROM file),
            category AS (SELECT unnest(categories, recursive := true) FROM file),
            letter AS (SELECT unnest(annotations, max_depth := 2) FROM file)
            """;

        var counts = (await AskAsync(letters + """
            SELECT (SELECT count(*) FROM image), (SELECT count(DISTINCT id) FROM letter), (SELECT count(*) FROM letter),
                   (SELECT count(*) FROM letter JOIN image ON letter.image_id = image.id JOIN category ON letter.category_id = category.id WHERE image.license = 1),
                   (SELECT count(*) FROM category), (SELECT count(DISTINCT name) FROM category)
            """)).Single().Select(value => Convert.ToInt32(value, CultureInfo.InvariantCulture)).ToList();
        var wrong = await AskAsync(letters + """
            , corner AS (SELECT letter.*, image.width, image.height, list_transform(range(0, 4), i -> segmentation[1][2 * i + 1]) AS x, list_transform(range(0, 4), i -> segmentation[1][2 * i + 2]) AS y
                         FROM letter JOIN image ON letter.image_id = image.id)
            SELECT id FROM corner
            WHERE len(segmentation[1]) <> 8 OR len(bbox) <> 4 OR iscrowd <> 0 OR score NOT BETWEEN 0 AND 1 OR bbox[3] <= 0 OR bbox[4] <= 0
               OR bbox[1] < 0 OR bbox[2] < 0 OR bbox[1] + bbox[3] > width OR bbox[2] + bbox[4] > height
               OR abs(list_min(x) - bbox[1]) > 0.01 OR abs(list_max(x) - bbox[1] - bbox[3]) > 0.02 OR abs(list_min(y) - bbox[2]) > 0.01 OR abs(list_max(y) - bbox[2] - bbox[4]) > 0.02
               OR abs(abs(list_sum(list_transform(range(1, 5), i -> x[i] * y[i % 4 + 1] - x[i % 4 + 1] * y[i]))) / 2 - area) > 0.02
            """);

        const int Letters = 15 + 12 + 11;
        Assert.Equal([3, Letters, Letters, Letters], counts.Take(4));
        Assert.Equal(counts[4], counts[5]);
        Assert.Empty(wrong);
    }

    [Fact]
    public async Task A_reader_of_json_ld_understands_every_term_of_the_crate()
    {
        await _bench.ExportAsync("crate", null);
        var file = _bench.At("crate", "data", "ro-crate-metadata.json");
        var crate = JsonNode.Parse(await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken))!;
        var context = Vendored("ro-crate-1.2-context.json");

        Assert.Equal((string)JsonNode.Parse(await File.ReadAllTextAsync(context, TestContext.Current.CancellationToken))!["@id"]!, (string)crate["@context"]!);
        var read = JsonLd.Expanded(file, (string)crate["@context"]!, context);

        Assert.Equal(JsonLd.Names(crate), JsonLd.Names(read));
        var byId = read.ToDictionary(item => (string)item!["@id"]!, item => item!);
        var root = byId["https://brackhaven.example/"];
        Assert.Equal("https://w3id.org/ro/crate/1.2", Linked(byId["https://brackhaven.example/ro-crate-metadata.json"], "http://purl.org/dc/terms/conformsTo"));
        Assert.Equal("https://brackhaven.example/", Linked(byId["https://brackhaven.example/ro-crate-metadata.json"], "http://schema.org/about"));
        Assert.Equal("CC0-1.0", Said(byId[Linked(root, "http://schema.org/license")], "http://schema.org/name"));
        Assert.True(DateOnly.TryParseExact(Said(root, "http://schema.org/datePublished"), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _));
        var parts = root["http://schema.org/hasPart"]!.AsArray().Select(part => (string)part!["@id"]!).ToList();
        Assert.All(parts, part => Assert.True(File.Exists(_bench.At("crate", "data", Uri.UnescapeDataString(part["https://brackhaven.example/".Length..]))), part));
        Assert.All(parts, part => Assert.Equal(64, Said(byId[part], "http://schema.org/sha256").Length));
        Assert.DoesNotContain(parts, part => Said(byId[part], "http://schema.org/encodingFormat") == "application/octet-stream");
    }

    /// <summary>RFC 8493, sections 2.1 to 2.2: what makes a bag valid, beside the sums that sha256sum confirms elsewhere.</summary>
    [Fact]
    public async Task The_bag_is_complete_and_its_tag_files_are_written_as_the_rfc_says()
    {
        await _bench.ExportAsync("crate", null);
        var bag = _bench.At("crate");
        var bytes = await File.ReadAllBytesAsync(Path.Combine(bag, "bagit.txt"), TestContext.Current.CancellationToken);

        Assert.Equal("BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n", Encoding.UTF8.GetString(bytes));
        Assert.Equal(["bag-info.txt", "bagit.txt", "data", "manifest-sha256.txt", "tagmanifest-sha256.txt"], Directory.GetFileSystemEntries(bag).Select(entry => Path.GetFileName(entry)).Order(StringComparer.Ordinal));
        Assert.All(File.ReadLines(Path.Combine(bag, "bag-info.txt")), line => Assert.Matches("^[^:\\s][^:]*: .+$", line));
        Assert.Equal(["bag-info.txt", "bagit.txt", "manifest-sha256.txt"], File.ReadLines(Path.Combine(bag, "tagmanifest-sha256.txt")).Select(line => line.Split("  ", 2)[1]).Order(StringComparer.Ordinal));
        Assert.All(File.ReadLines(Path.Combine(bag, "manifest-sha256.txt")), line => Assert.Matches("^[0-9a-f]{64}  data/(?!.*(^|/)\\.\\.?(/|$))[^\\\\]+$", line));
        var one = Directory.GetFiles(Path.Combine(bag, "data", "lido")).First();
        await File.AppendAllTextAsync(one, " ", TestContext.Current.CancellationToken);
        Assert.NotEqual(0, ChildProcess.Output("/bin/sh", "-c", $"cd '{bag}' && sha256sum --check --strict --quiet manifest-sha256.txt").ExitCode);
    }

    [Fact]
    public async Task A_reader_of_json_ld_understands_every_term_of_linked_art()
    {
        var file = await _bench.OneAsync("linked-art", ".json");
        var shown = JsonNode.Parse(await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken))!;

        var read = JsonLd.Expanded(file, (string)shown["@context"]!, Schemas.At("linked-art", "context.json"));

        Assert.Equal(JsonLd.Names(shown), JsonLd.Names(read));
        Assert.Equal("http://www.cidoc-crm.org/cidoc-crm/E22_Human-Made_Object", (string?)read[0]!["@type"]![0]);
        var dimension = read[0]!["http://www.cidoc-crm.org/cidoc-crm/P43_has_dimension"]![0]!;
        Assert.Equal(39.8732, (double)dimension["http://www.cidoc-crm.org/cidoc-crm/P90_has_value"]![0]!["@value"]!);
        Assert.Equal(39.802, (double)dimension["http://www.cidoc-crm.org/cidoc-crm/P90a_has_lower_value_limit"]![0]!["@value"]!);
    }

    /// <summary>AngleSharp's strict mode stops at every parse error that the HTML standard (WHATWG, section 13.2.2) names.</summary>
    [Fact]
    public async Task The_object_page_is_html_without_a_parse_error_and_keeps_hard_lettering()
    {
        var text = await File.ReadAllTextAsync(await _bench.OneAsync("object-id", ".html"), TestContext.Current.CancellationToken);
        var parser = new HtmlParser(new HtmlParserOptions { IsStrictMode = true });

        var page = parser.ParseDocument(text);

        Assert.Equal(["Inventory number", "Type of object", "Materials and techniques", "Measurements", "Inscriptions and markings", "Distinguishing features", "Title", "Subject", "Date or period", "Maker", "Photographs"], page.QuerySelectorAll("th").Select(heading => heading.TextContent));
        Assert.Contains("London & <Co> ", page.QuerySelectorAll("tr")[4].TextContent, StringComparison.Ordinal);
        Assert.Equal(ExportBench.Key, page.QuerySelector("td")!.TextContent);
        Assert.Equal("en", page.DocumentElement.GetAttribute("lang"));
        Assert.Throws<HtmlParseException>(() => parser.ParseDocument(text.Replace("</table>", string.Empty, StringComparison.Ordinal)));
    }

    private static string Vendored(string name) => Path.Combine(AppContext.BaseDirectory, "Vendored", name);

    private static string Linked(JsonNode item, string name) => (string)item[name]![0]!["@id"]!;

    private static string Said(JsonNode item, string name) => (string)item[name]![0]!["@value"]!;

    private static string SqlType(string type) => type switch { "integer" => "BIGINT", "number" => "DOUBLE", "datetime" => "TIMESTAMPTZ", _ => "VARCHAR" };

    private static string Written(object? value) => value switch
    {
        null => string.Empty,
        DateTime time => time.ToUniversalTime().ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture),
        _ => Convert.ToString(value, CultureInfo.InvariantCulture)!,
    };

    private static async Task<List<object?[]>> AskAsync(string question)
    {
        await using var duck = new DuckDBConnection("Data Source=:memory:");
        await duck.OpenAsync(TestContext.Current.CancellationToken);
        await using var command = duck.CreateCommand();
#pragma warning disable CA2100 // The question is the test's own.
        command.CommandText = question;
#pragma warning restore CA2100
        await using var reader = await command.ExecuteReaderAsync(TestContext.Current.CancellationToken);
        var rows = new List<object?[]>();
        while (await reader.ReadAsync(TestContext.Current.CancellationToken))
        {
            rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(column => reader.IsDBNull(column) ? null : reader.GetValue(column))]);
        }

        return rows;
    }
}
