using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using InscriptionLab.App.Measuring;
using InscriptionLab.App.Records;
using InscriptionLab.App.Reports.Html;
using InscriptionLab.Cells;

namespace InscriptionLab.App.Reports;

/// <summary>The record of a measurement folder: all that <c>--json</c> holds, and how it was come by: budget, versions, options.</summary>
internal static class MeasurementRecord
{
    private static readonly JsonSerializerOptions Indented = new()
    {
        WriteIndented = true,
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    internal static string Of(MeasuredPhotos measured, Provenance provenance) => new JsonObject
    {
        ["program"] = provenance.Program,
        ["made"] = provenance.Made.ToString("o", CultureInfo.InvariantCulture),
        ["options"] = Strings(provenance.Asked),
        ["stages"] = new JsonObject(provenance.Stages.Select(stage => KeyValuePair.Create(stage.Stage, JsonSerializer.SerializeToNode(stage.Options, stage.Options.GetType(), Indented)))),
        ["photos"] = new JsonArray([.. measured.Photos.Select(Of)]),
        ["together"] = new JsonArray([.. measured.Together.Select(Of)]),
        ["optics"] = measured.Optics is { } optics ? OpticsText.Json(optics) : null,
        ["cautions"] = Strings(Cautions.Sentences),
    }.ToJsonString(Indented) + "\n";

    private static JsonObject Of(PhotoMeasurement measured)
    {
        var record = JsonNode.Parse(JsonLines.LineOf(MeasureRecordMaker.Of(measured)))!.AsObject();
        record["sha256"] = measured.Photo.Sha256;
        if (measured.Measurement is { } cell)
        {
            record["scale"]!["size_mm"] = cell.Scale.Size.Millimetres;
            record["scale"]!["size_assumed"] = cell.Scale.SizeAssumed;
            record["tilt_deg"] = cell.Tilt.Degrees;
            record["camera_distance_mm"] = cell.CameraDistance.Value.Millimetres;
            record["rim_above_scale_mm"] = cell.PlaneOffset.Value.Millimetres;
            foreach (var (circle, written) in cell.Circles.Zip(record["circles"]!.AsArray()))
            {
                written!["statement"] = circle.ToStatement();
                written["seen_share"] = circle.SeenShare;
                written["edge_points"] = circle.Edge.Length;
                written["edge_residual_rms_px"] = EdgeResiduals.RootMeanSquare(circle);
                Budget(written.AsObject(), circle.Budget);
            }

            record["optics"] = measured.Optics is { } optics ? OpticsText.Json(optics) : null;
        }

        return record;
    }

    private static JsonObject Of(RepeatedCircle circle)
    {
        var record = new JsonObject
        {
            ["role"] = Words.For(circle.Role),
            ["diameter_mm"] = circle.Diameter.Value.Millimetres,
            ["expanded_uncertainty_mm"] = circle.Diameter.ExpandedUncertainty.Millimetres,
            ["coverage_factor"] = circle.Diameter.CoverageFactor,
            ["statement"] = circle.ToStatement(),
            ["readings_mm"] = new JsonArray([.. circle.Readings.Select(reading => (JsonNode)reading.Millimetres)]),
            ["disagreement"] = circle.Disagreement,
        };
        Budget(record, circle.Budget);
        return record;
    }

    private static void Budget(JsonObject record, UncertaintyBudget budget)
    {
        record["budget"] = new JsonArray([.. budget.Rows.Select(Of)]);
        record["combined_standard_uncertainty_mm"] = budget.CombinedStandardUncertainty;
        record["effective_degrees_of_freedom"] = double.IsFinite(budget.EffectiveDegreesOfFreedom) ? budget.EffectiveDegreesOfFreedom : null;
        record["monte_carlo_95_percent_mm"] = BudgetSection.Drawn(budget);
    }

    private static JsonObject Of(BudgetRow row) => new()
    {
        ["source"] = row.Source,
        ["standard_uncertainty"] = row.StandardUncertainty,
        ["unit"] = row.Unit,
        ["sensitivity"] = row.Sensitivity,
        ["contribution_mm"] = row.Contribution,
        ["degrees_of_freedom"] = double.IsFinite(row.DegreesOfFreedom) ? row.DegreesOfFreedom : null,
        ["basis"] = row.Basis,
    };

    private static JsonArray Strings(ImmutableArray<string> strings) => new([.. strings.Select(text => (JsonNode)text)]);
}
