using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Records;
using InscriptionLab.Findings;
using InscriptionLab.Reliefs;
using InscriptionLab.Strips;

namespace InscriptionLab.App.Reports;

/// <summary>The record of an examination folder: all that <c>--json</c> holds, and how it was come by: versions, hashes, options, times.</summary>
internal static class ExaminationRecord
{
    private static readonly JsonSerializerOptions Indented = new()
    {
        WriteIndented = true,
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    internal static string Of(ImmutableArray<Examination> examinations, ImmutableArray<SetExamination> sets, Provenance provenance) => new JsonObject
    {
        ["program"] = provenance.Program,
        ["made"] = provenance.Made.ToString("o", CultureInfo.InvariantCulture),
        ["options"] = Strings(provenance.Asked),
        ["reference"] = new JsonObject { ["name"] = provenance.List, ["sha256"] = provenance.ListSha256 },
        ["models"] = new JsonArray([.. provenance.Models.Select(model => new JsonObject { ["name"] = model.Name, ["sha256"] = model.Sha256 })]),
        ["stages"] = new JsonObject(provenance.Stages.Select(stage => KeyValuePair.Create(stage.Stage, JsonSerializer.SerializeToNode(stage.Options, stage.Options.GetType(), Indented)))),
        ["photos"] = new JsonArray([.. examinations.Select(Of)]),
        ["together"] = new JsonArray([.. sets.Select(Together)]),
        ["ask_for"] = Strings(Requests.Of(examinations, sets)),
        ["cautions"] = Strings(Cautions.Sentences),
    }.ToJsonString(Indented) + "\n";

    private static JsonObject Of(Examination examination)
    {
        var record = JsonNode.Parse(JsonLines.LineOf(RecordMaker.Of(examination)))!.AsObject();
        Complete(record, examination.Finding);
        record["reader"] = examination.Reading.Reader;
        record["style"] = new JsonArray([.. examination.Reading.Style.Select(style => new JsonObject { ["style"] = style.Style, ["probability"] = style.Probability.Value })]);
        record["photo"] = new JsonObject
        {
            ["width"] = examination.Photo.Colour.Width,
            ["height"] = examination.Photo.Colour.Height,
            ["orientation"] = examination.Photo.Lens.Orientation,
            ["focal_length_px"] = examination.Photo.Lens.FocalLength?.Pixels,
            ["sharpness"] = examination.Photo.Quality.Sharpness,
            ["burnt_fraction"] = examination.Photo.Quality.BurntFraction,
            ["black_fraction"] = examination.Photo.Quality.BlackFraction,
        };
        record["strip"] = new JsonObject
        {
            ["width"] = examination.Strip.Image.Width,
            ["height"] = examination.Strip.Image.Height,
            ["unrolled"] = examination.Strip.Unrolled,
            ["px_per_diameter"] = examination.Strip.PixelsPerDiameter,
        };
        record["seconds"] = new JsonObject(examination.Times.Select(time => KeyValuePair.Create(time.Stage, (JsonNode?)time.Elapsed.TotalSeconds)));
        return record;
    }

    private static JsonObject Together(SetExamination set)
    {
        var record = JsonNode.Parse(JsonLines.LineOf(RecordMaker.Of(set)))!.AsObject();
        Complete(record, set.Finding);
        record["reasons"] = Strings(set.Reasons);
        record["strip"] = set.Mosaic is { } mosaic ? Of(mosaic) : null;
        record["relief"] = set.Relief is { } relief ? Of(relief) : null;
        return record;
    }

    private static JsonObject Of(SurfaceRelief relief) => new()
    {
        ["kind"] = relief.Kind == ReliefKind.Normals ? "normals" : "one-direction",
        ["unit"] = "relative",
        ["lamps_given"] = relief.LampsGiven,
        ["lamps"] = new JsonArray([.. relief.Lamps.Select(lamp => new JsonObject { ["around_deg"] = lamp.Around.Degrees, ["along_deg"] = lamp.Along.Degrees })]),
    };

    private static JsonObject Of(TurnMosaic mosaic) => new()
    {
        ["width"] = mosaic.Image.Width,
        ["height"] = mosaic.Image.Height,
        ["px_per_diameter"] = 2 * mosaic.PixelsPerRadius,
        ["share_of_circumference_seen"] = mosaic.ShareSeen,
        ["closure_deg"] = mosaic.Closure?.Degrees,
        ["seam_error_px"] = mosaic.SeamError.Pixels,
        ["views"] = new JsonArray([.. mosaic.Views.Select(view => new JsonObject
        {
            ["file_index"] = view.PhotoIndex,
            ["turn_deg"] = view.Turn.Degrees,
            ["axial_shift_radii"] = view.AxialShift,
            ["agreement"] = view.Agreement,
        })]),
    };

    private static void Complete(JsonObject record, Finding finding)
    {
        record["finding"]!["cannot_decide"] = Strings(finding.CannotDecide);
        record["finding"]!["retake"] = Strings(finding.Retake);
    }

    private static JsonArray Strings(ImmutableArray<string> strings) => new([.. strings.Select(text => (JsonNode)text)]);
}
