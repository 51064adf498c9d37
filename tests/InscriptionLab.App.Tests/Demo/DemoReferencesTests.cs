using System;
using System.IO;
using System.Linq;
using System.Text.Json;
using InscriptionLab.App.Demo;
using InscriptionLab.References;
using Json.Schema;
using Xunit;

namespace InscriptionLab.App.Tests.Demo;

public sealed class DemoReferencesTests
{
    private static readonly ReferenceList Demo = DemoReferences.Load();

    [Fact]
    public void Csv_and_json_hold_the_same_rows()
    {
        var csv = new ReferenceListReader().Read(DemoReferences.CsvFile, DemoReferences.Bytes(DemoReferences.CsvFile));
        var json = new ReferenceListReader().Read(DemoReferences.JsonFile, DemoReferences.Bytes(DemoReferences.JsonFile));

        Assert.Equal(csv.List.Forms.ToArray(), json.List.Forms.ToArray());
        Assert.Empty(csv.Warnings);
        Assert.Empty(json.Warnings);
    }

    [Fact]
    public void Every_row_says_that_its_source_is_invented() =>
        Assert.All(Demo.Forms, form => Assert.Contains("invented", form.Source, StringComparison.Ordinal));

    [Fact]
    public void The_page_counts_what_the_list_holds()
    {
        var attested = Demo.Forms.Where(form => form.Status == AttestationStatus.Attested).ToArray();
        var copies = Demo.Forms.Count(form => form.Status == AttestationStatus.PeriodCopy);
        var reproductions = Demo.Forms.Count(form => form.Status == AttestationStatus.Reproduction);

        Assert.Equal((124, 108, 44, 9, 7), (Demo.Forms.Length, attested.Length, attested.Select(form => form.Maker).Distinct().Count(), copies, reproductions));
    }

    [Theory]
    [InlineData("Thos. Brackwell")]
    [InlineData("Wm. Hathersedge")]
    [InlineData("CALDERWYN & CO")]
    [InlineData("Fennimarch")]
    [InlineData("Tolliver")]
    [InlineData("Harwick & Penhale")]
    [InlineData("Isleworthy")]
    [InlineData("Kesselbrandt")]
    [InlineData("Ludgrove")]
    [InlineData("Merrowby & Son")]
    [InlineData("OMBERSALL")]
    [InlineData("Pellowick")]
    [InlineData("PINCHBOURNE")]
    [InlineData("QUILLANE")]
    [InlineData("Stannick")]
    [InlineData("Valmorin")]
    [InlineData("Aubrelle Fils")]
    [InlineData("Bellacorti")]
    [InlineData("Corvestri")]
    [InlineData("Dumarchais")]
    public void The_houses_of_the_sample_photos_are_attested_in_both_casings(string form)
    {
        var casings = Demo.Forms.Where(row => row.Status == AttestationStatus.Attested && row.Form.Equals(form, StringComparison.OrdinalIgnoreCase)).Select(row => row.Form).ToArray();

        Assert.Contains(form, casings);
        Assert.Contains(form.ToUpperInvariant(), casings);
        Assert.Contains(casings, casing => casing.Any(char.IsLower));
    }

    [Fact]
    public void The_schema_accepts_the_list_and_refuses_a_wrong_status()
    {
        using var stream = typeof(DemoReferences).Assembly.GetManifestResourceStream("InscriptionLab.App.Schemas.reference-list.schema.json")!;
        using var text = new StreamReader(stream);
        var schema = JsonSchema.FromText(text.ReadToEnd());
        bool IsValid(string json)
        {
            using var document = JsonDocument.Parse(json);
            return schema.Evaluate(document.RootElement).IsValid;
        }

        Assert.True(IsValid(System.Text.Encoding.UTF8.GetString(DemoReferences.Bytes(DemoReferences.JsonFile))));
        Assert.False(IsValid("""{"forms":[{"form":"A","maker":"A","status":"atested"}]}"""));
        Assert.False(IsValid("""{"forms":[{"form":" ","maker":"A","status":"attested"}]}"""));
        Assert.False(IsValid("""{"forms":[{"form":"A","maker":"A","status":"attested","from":"1790"}]}"""));
        Assert.False(IsValid("""{"forms":[{"maker":"A","status":"attested"}]}"""));
    }
}
