using System;
using System.IO;
using System.Linq;
using System.Text.Json.Nodes;
using System.Threading.Tasks;
using Jint;
using Xunit;

namespace InscriptionLab.Catalogue.Tests.Exchange;

/// <summary>The IIIF manifest read by a reader that others wrote (<c>@iiif/parser</c>, run by an interpreter): everything arrives, and written again by that reader it is the same manifest.</summary>
public sealed class IiifReaderTests : IDisposable
{
    private readonly ExportBench _bench = new();

    public void Dispose() => _bench.Dispose();

    [Fact]
    public async Task Another_reader_of_manifests_finds_every_canvas_photo_and_annotation_and_writes_the_same_again()
    {
        var manifest = JsonNode.Parse(await File.ReadAllTextAsync(await _bench.OneAsync("iiif", ".json"), TestContext.Current.CancellationToken))!;
        var canvases = manifest["items"]!.AsArray();

        var (read, again) = Read(manifest);

        Assert.Equal(canvases.Select(canvas => (string)canvas!["id"]!), read["Canvas"]!.AsObject().Select(pair => pair.Key));
        var annotations = canvases.SelectMany(canvas => canvas!["items"]!.AsArray().Concat(canvas["annotations"]?.AsArray() ?? [])).SelectMany(page => page!["items"]!.AsArray()).ToList();
        Assert.True(annotations.Count > 2);
        Assert.Equal(annotations.Select(annotation => (string)annotation!["id"]!).Order(StringComparer.Ordinal), read["Annotation"]!.AsObject().Select(pair => pair.Key).Order(StringComparer.Ordinal));
        Assert.Equal(2, read["ContentResource"]!.AsObject().Count(pair => (string)pair.Value!["type"]! == "Image"));
        Assert.Equal(annotations.Count - 2, read["Annotation"]!.AsObject().Count(pair => (string?)pair.Value!["target"]!["selector"]?["type"] == "SvgSelector"));
        Assert.True(JsonNode.DeepEquals(manifest, again), "The manifest came back changed.");
    }

    [Fact]
    public async Task What_that_reader_does_not_understand_does_not_come_back()
    {
        var manifest = JsonNode.Parse(await File.ReadAllTextAsync(await _bench.OneAsync("iiif", ".json"), TestContext.Current.CancellationToken))!;
        manifest["items"]![0]!["items"]![0]!["items"]![0]!.AsObject().Remove("motivation");
        manifest["items"]![0]!["surface"] = "brass";

        Assert.False(JsonNode.DeepEquals(manifest, Read(manifest).Again));
    }

    private static (JsonNode Read, JsonNode Again) Read(JsonNode manifest)
    {
        using var engine = new Engine();
        engine.Execute(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Vendored", "iiif-parser.umd.js")));
        engine.SetValue("text", manifest.ToJsonString());
        engine.Execute("""
            const reader = globalThis.IIIFParser.Presentation3;
            const read = reader.normalize(JSON.parse(text));
            const again = reader.serialize({ entities: read.entities, mapping: read.mapping, requests: {} }, read.resource, reader.serializeConfigPresentation3);
            """);
        return (JsonNode.Parse(engine.Evaluate("JSON.stringify(read.entities)").AsString())!, JsonNode.Parse(engine.Evaluate("JSON.stringify(again)").AsString())!);
    }
}
