using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Threading.Tasks;
using System.Xml.Linq;
using DuckDB.NET.Data;
using InscriptionLab.Catalogue.Tests.Services;
using InscriptionLab.Tables;
using Json.Schema;
using Xunit;

namespace InscriptionLab.Catalogue.Tests.Exchange;

/// <summary>Each form is held against its standard's own schema or read by another program, and what matters is read back from it.</summary>
public sealed class ExchangeTests : IDisposable
{
    private const string Key = ExportBench.Key;
    private readonly ExportBench _bench = new();

    public void Dispose() => _bench.Dispose();

    [Fact]
    public async Task Tei_holds_against_the_EpiDoc_schema_and_marks_doubt_letter_by_letter()
    {
        var file = await OneAsync("epidoc", ".xml");
        var text = XDocument.Load(file);
        XNamespace tei = "http://www.tei-c.org/ns/1.0";

        var edition = text.Descendants(tei + "div").Single(div => (string?)div.Attribute("type") == "edition");
        Assert.Equal("Tobias BrckwllLondon & <Co> \uFFFD", string.Concat(edition.DescendantNodes().OfType<XText>().Where(node => node.Parent!.Name != tei + "unclear").Select(node => node.Value)).Replace("e", string.Empty, StringComparison.Ordinal));
        Assert.Single(edition.Descendants(tei + "gap"));
        Assert.Contains("Tobias Brockwell", text.Descendants(tei + "div").Single(div => (string?)div.Attribute("type") == "commentary").Value, StringComparison.Ordinal);

        var schema = Schemas.At("tei-epidoc-9.4.rng");
        var jing = ChildProcess.Find("jing");
        Assert.SkipWhen(jing is null, "jing is not installed here (Debian package jing): the RELAX NG schema was not applied.");
        var (code, output) = ChildProcess.Output(jing!, schema, file);
        Assert.True(code == 0, output);
        await File.WriteAllTextAsync(file, (await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken)).Replace("<ab>", "<abc>", StringComparison.Ordinal).Replace("</ab>", "</abc>", StringComparison.Ordinal), TestContext.Current.CancellationToken);
        Assert.NotEqual(0, ChildProcess.Output(jing!, schema, file).ExitCode);
    }

    [Fact]
    public async Task Lido_holds_against_its_schema_and_carries_the_uncertainty()
    {
        var file = await OneAsync("lido", ".xml");
        XNamespace lido = "http://www.lido-schema.org";
        var text = XDocument.Load(file);

        Assert.Equal("39.8732", text.Descendants(lido + "measurementValue").Single().Value);
        Assert.Equal("U = 0.0712 mm, k = 2", text.Descendants(lido + "qualifierMeasurements").Single().Value);
        Assert.Equal("Tobias Br?ckwell", text.Descendants(lido + "inscriptionTranscription").First().Value);
        Assert.Equal("tube material: pasteboard (1790 or earlier; common practice: a handbook), seen by A. Cataloguer (1970-01-01)", text.Descendants(lido + "objectDescriptionSet").First().Element(lido + "descriptiveNoteValue")!.Value);
        Assert.Empty(Schemas.Faults(file, Schemas.At("lido", "lido-v1.1.xsd")));
    }

    [Fact]
    public async Task Page_xml_holds_against_its_schema_and_gives_each_glyph_its_rivals()
    {
        await ExportAsync("page", Key);
        var file = Directory.GetFiles(_bench.At("page")).Single();
        XNamespace page = "http://schema.primaresearch.org/PAGE/gts/pagecontent/2019-07-15";
        var glyphs = XDocument.Load(file).Descendants(page + "Glyph").ToList();

        var rivals = glyphs.Select(glyph => glyph.Elements(page + "TextEquiv").Select(text => text.Element(page + "Unicode")!.Value + text.Attribute("conf")!.Value)).First(texts => texts.Count() > 1);
        Assert.Equal(["e0.93", "o0.06"], rivals);
        Assert.Empty(Schemas.Faults(file, Schemas.At("page-2019-07-15.xsd")));
    }

    [Fact]
    public async Task Linked_Art_holds_against_its_schema_and_gives_the_measurement_its_limits()
    {
        var file = await OneAsync("linked-art", ".json");
        var shown = JsonNode.Parse(await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken))!;
        var dimension = shown["dimension"]![0]!;

        Assert.Equal((39.8732, 39.802, 39.9444), ((double)dimension["value"]!, (double)dimension["lower_value_limit"]!, (double)dimension["upper_value_limit"]!));
        var options = new EvaluationOptions { OutputFormat = OutputFormat.List };
        var build = new BuildOptions { SchemaRegistry = new SchemaRegistry() };
        JsonSchema.FromFile(Schemas.At("linked-art", "core.json"), build);
        Holds(JsonSchema.FromFile(Schemas.At("linked-art", "object.json"), build), shown, options, broken => broken["dimension"]![0]!["value"] = "wide");
    }

    [Fact]
    public async Task The_manifest_holds_against_the_IIIF_schema_and_places_each_letter()
    {
        var file = await OneAsync("iiif", ".json");
        var manifest = JsonNode.Parse(await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken))!;

        var annotations = manifest["items"]!.AsArray().Where(canvas => canvas!["annotations"] is not null).SelectMany(canvas => canvas!["annotations"]![0]!["items"]!.AsArray()).ToList();
        Assert.Equal(2, annotations.Count(annotation => (string?)annotation!["motivation"] == "supplementing"));
        Assert.Contains(annotations, annotation => ((string?)annotation!["body"]!["value"])!.StartsWith("e 0.93; or o 0.06", StringComparison.Ordinal));
        Assert.Contains("100.5,500.5", (string?)annotations[0]!["target"]!["selector"]!["value"], StringComparison.Ordinal);
        Holds(JsonSchema.FromFile(Schemas.At("iiif_3_0.json"), new BuildOptions { Dialect = Dialect.Draft07, SchemaRegistry = new SchemaRegistry() }), manifest, new EvaluationOptions { OutputFormat = OutputFormat.List }, broken => broken["items"]!.AsArray().Where(canvas => canvas!["annotations"] is not null).SelectMany(canvas => canvas!["annotations"]![0]!["items"]!.AsArray()).First()!["target"]!["type"] = "Somewhere");
    }

    [Fact]
    public async Task Coco_counts_every_letter_and_points_at_what_is_there()
    {
        await ExportAsync("coco", null);
        var coco = JsonNode.Parse(await File.ReadAllTextAsync(_bench.At("coco", "letters.json"), TestContext.Current.CancellationToken))!;
        var images = coco["images"]!.AsArray().ToDictionary(image => (int)image!["id"]!, image => image!);
        var names = coco["categories"]!.AsArray().ToDictionary(category => (int)category!["id"]!, category => (string)category!["name"]!);

        var read = coco["annotations"]!.AsArray().GroupBy(annotation => (int)annotation!["image_id"]!).Select(letters => string.Concat(letters.Select(letter => names[(int)letter!["category_id"]!])));
        Assert.Equal(["TobiasBr?ckwellLondon&<Co>\u0001", "Jos.Penfold"], read);
        Assert.All(coco["annotations"]!.AsArray(), annotation =>
        {
            var box = annotation!["bbox"]!.AsArray().Select(number => (double)number!).ToList();
            var image = images[(int)annotation["image_id"]!];
            Assert.True(box[0] >= 0 && box[1] >= 0 && box[2] > 0 && box[3] > 0 && box[0] + box[2] <= (int)image["width"]! && box[1] + box[3] <= (int)image["height"]!);
        });
    }

    [Fact]
    public async Task Csv_fits_its_own_table_schema_and_comes_back_whole()
    {
        await ExportAsync("csv", null);
        var package = JsonNode.Parse(await File.ReadAllTextAsync(_bench.At("csv", "datapackage.json"), TestContext.Current.CancellationToken))!;

        foreach (var resource in package["resources"]!.AsArray())
        {
            var table = CsvTable.Read(await File.ReadAllTextAsync(_bench.At("csv", (string)resource!["path"]!), TestContext.Current.CancellationToken));
            var fields = resource["schema"]!["fields"]!.AsArray();
            Assert.Equal(fields.Select(field => (string)field!["name"]!), table[0]);
            Assert.All(table.Skip(1), row => Assert.All(fields.Zip(row), cell => Assert.True(Fits(cell.First!, cell.Second), $"{cell.Second} is no {cell.First!["type"]}")));
        }

        var lines = CsvTable.Read(await File.ReadAllTextAsync(_bench.At("csv", "lines.csv"), TestContext.Current.CancellationToken));
        Assert.Equal(["Tobias Br?ckwell", "London & <Co> \u0001", "Jos. Penfold"], lines.Skip(1).Select(row => row[4]));
        Assert.Equal("Tobias Brockwell", lines[1][5]);
    }

    [Fact]
    public async Task Parquet_is_read_by_another_program_and_says_what_the_csv_says()
    {
        await ExportAsync("csv", null);
        await ExportAsync("parquet", null);
        await using var duck = new DuckDBConnection("Data Source=:memory:");
        await duck.OpenAsync(TestContext.Current.CancellationToken);

        foreach (var name in new[] { "lines", "letters", "measurements", "observations" })
        {
            await using var command = duck.CreateCommand();
            command.CommandText = $"SELECT * FROM read_parquet('{_bench.At("parquet", name + ".parquet")}')";
            await using var reader = await command.ExecuteReaderAsync(TestContext.Current.CancellationToken);
            var table = CsvTable.Read(await File.ReadAllTextAsync(_bench.At("csv", name + ".csv"), TestContext.Current.CancellationToken));
            var row = 1;
            for (; await reader.ReadAsync(TestContext.Current.CancellationToken); row++)
            {
                Assert.All(table[0].Select((column, index) => (column, index)), item => Assert.Equal(
                    table[row][item.index],
                    Convert.ToString(reader.GetValue(reader.GetOrdinal(item.column)), CultureInfo.InvariantCulture)));
            }

            Assert.Equal(table.Length, row);
        }
    }

    [Fact]
    public async Task A_crate_lies_in_a_bag_whose_sums_another_program_confirms()
    {
        await ExportAsync("crate", null);
        var bag = _bench.At("crate");

        foreach (var manifest in new[] { "manifest-sha256.txt", "tagmanifest-sha256.txt" })
        {
            var (code, output) = ChildProcess.Output("/bin/sh", "-c", $"cd '{bag}' && sha256sum --check --strict {manifest}");
            Assert.True(code == 0, output);
        }

        var listed = File.ReadLines(Path.Combine(bag, "manifest-sha256.txt")).Select(line => line.Split("  ", 2)[1]).Order(StringComparer.Ordinal);
        var there = Directory.GetFiles(Path.Combine(bag, "data"), "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(bag, file)).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(there, listed);
        var graph = JsonNode.Parse(await File.ReadAllTextAsync(Path.Combine(bag, "data", "ro-crate-metadata.json"), TestContext.Current.CancellationToken))!["@graph"]!.AsArray();
        var described = graph.Where(item => (string?)item!["@type"] == "File").Select(item => (string)item!["@id"]!).ToList();
        Assert.Equal(there.Count - 1, described.Count);
        Assert.Equal(described, graph.Single(item => (string?)item!["@id"] == "./")!["hasPart"]!.AsArray().Select(part => (string)part!["@id"]!));
        Assert.Equal($"Payload-Oxum: {there.Sum(file => new FileInfo(Path.Combine(bag, file)).Length)}.{there.Count}", File.ReadLines(Path.Combine(bag, "bag-info.txt")).Single(line => line.StartsWith("Payload-Oxum", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task The_object_page_names_no_maker_and_makes_no_markup_of_lettering()
    {
        var page = await File.ReadAllTextAsync(await OneAsync("object-id", ".html"), TestContext.Current.CancellationToken);

        Assert.Contains("London &amp; &lt;Co&gt;", page, StringComparison.Ordinal);
        Assert.Contains("<tr><th>Maker</th><td><span class=\"open\">", page, StringComparison.Ordinal);
        Assert.Contains("A. Cataloguer", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_lies_in_the_trash_is_not_handed_on()
    {
        _bench.Catalogue.Desk.Trash("tube-2", trashed: true, "tester");

        Assert.Equal(1, await ExportAsync("lido", null));
    }

    private static void Holds(JsonSchema schema, JsonNode document, EvaluationOptions options, Action<JsonNode> breakIt)
    {
        var result = schema.Evaluate(document.Deserialize<JsonElement>(), options);
        Assert.True(result.IsValid, string.Join('\n', Errors(result)));
        var broken = document.DeepClone();
        breakIt(broken);
        Assert.False(schema.Evaluate(broken.Deserialize<JsonElement>(), options).IsValid);
    }

    private static IEnumerable<string> Errors(EvaluationResults result) =>
        (result.Details ?? []).Where(detail => detail.Errors is not null).SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}")).Take(20);

    private static bool Fits(JsonNode field, string value)
    {
        if (value.Length == 0)
        {
            return field["constraints"] is null;
        }

        return (string?)field["type"] switch
        {
            "integer" => int.TryParse(value, CultureInfo.InvariantCulture, out _),
            "number" => double.TryParse(value, CultureInfo.InvariantCulture, out _),
            "datetime" => DateTimeOffset.TryParseExact(value, "yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out _),
            _ => true,
        };
    }

    private Task<int> ExportAsync(string format, string? key) => _bench.ExportAsync(format, key);

    private Task<string> OneAsync(string format, string ending) => _bench.OneAsync(format, ending);
}
