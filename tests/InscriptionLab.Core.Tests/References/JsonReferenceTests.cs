using System;
using System.Linq;
using Xunit;

namespace InscriptionLab.Core.Tests.References;

public sealed class JsonReferenceTests
{
    [Fact]
    public void Json_and_csv_hold_the_same_fields()
    {
        var json = ListText.Json(
            """
            { "name": "Brackhaven", "forms": [
              { "form": "Oskelby", "maker": "Oskelby", "status": "attested", "from": 1801, "to": 1815, "style": "roman", "certainty": "certain", "note": null, "letter_height_mm": 2.4, "letter_spacing": 0.85 },
              { "form": "OSKELBEY", "maker": "Oskelby", "status": "period-copy" } ] }
            """);
        var csv = ListText.Csv("form,maker,status,from,to,style,certainty,letter_height_mm,letter_spacing", "Oskelby,Oskelby,attested,1801,1815,roman,certain,2.4,0.85", "OSKELBEY,Oskelby,period-copy,,,,,,");

        Assert.Equal(csv.List.Forms.ToArray(), json.List.Forms.ToArray());
        Assert.Equal("Brackhaven", json.List.Name);
        Assert.Equal("reference.csv", csv.List.Name);
    }

    [Fact]
    public void A_wrong_word_names_form_and_field() => Assert.Equal(
        "reference.json, form 2, field status: 'atested' is not one of attested, period-copy, reproduction.",
        ListText.JsonError("""{"forms":[{"form":"A","maker":"A","status":"attested"},{"form":"B","maker":"B","status":"atested"}]}"""));

    [Fact]
    public void Broken_json_names_line_and_byte() => Assert.Equal(
        "reference.json: is not JSON at line 2, byte 10; look there for a missing comma, bracket or quotation mark.",
        ListText.JsonError("{\"forms\":[\n{\"form\": }]}"));

    [Fact]
    public void A_list_at_the_top_is_told_what_to_be() =>
        Assert.StartsWith("reference.json: the top level must be an object with a list named forms", ListText.JsonError("[]"), StringComparison.Ordinal);

    [Fact]
    public void A_year_in_quotation_marks_is_refused() => Assert.Equal(
        "reference.json, form 1, field from: must be a year as a number, without quotation marks.",
        ListText.JsonError("""{"forms":[{"form":"A","maker":"A","status":"attested","from":"1790"}]}"""));

    [Fact]
    public void A_size_in_quotation_marks_is_refused_and_so_is_one_out_of_range()
    {
        Assert.Equal(
            "reference.json, form 1, field letter_spacing: must be a number, without quotation marks.",
            ListText.JsonError("""{"forms":[{"form":"A","maker":"A","status":"attested","letter_spacing":"0.85"}]}"""));
        Assert.Equal(
            "reference.json, form 1, field letter_height_mm: '-2.4' is not a number from 0.3 to 40, written with a point and without a unit, such as 2.4 (millimetres).",
            ListText.JsonError("""{"forms":[{"form":"A","maker":"A","status":"attested","letter_height_mm":-2.4}]}"""));
    }

    [Fact]
    public void A_field_named_twice_is_refused() =>
        Assert.StartsWith("reference.json: ", ListText.JsonError("""{"forms":[{"form":"A","form":"B","maker":"A","status":"attested"}]}"""), StringComparison.Ordinal);

    [Fact]
    public void A_file_that_begins_with_a_brace_is_json_whatever_its_name() =>
        Assert.Empty(ListText.Read("list.txt", """ { "forms": [] } """).List.Forms);

    [Fact]
    public void An_unknown_field_is_warned_of() =>
        Assert.StartsWith("reference.json, form 1: the field 'stile' is not known", Assert.Single(ListText.Json("""{"forms":[{"form":"A","maker":"A","status":"attested","stile":"x"}]}""").Warnings), StringComparison.Ordinal);
}
