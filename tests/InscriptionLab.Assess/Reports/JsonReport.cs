using System.Linq;
using System.Text.Json;
using System.Text.Json.Nodes;
using InscriptionLab.Assess.Scores;

namespace InscriptionLab.Assess.Reports;

/// <summary>An assessment as JSON: counts first, so that any rate can be worked out again.</summary>
internal static class JsonReport
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    internal static string Of(Assessment assessment) => new JsonObject
    {
        ["reading"] = new JsonArray([.. assessment.Reading.Select(Of)]),
        ["blank"] = new JsonObject
        {
            ["photos"] = assessment.Blanks,
            ["with_text"] = assessment.BlanksWithText,
            ["false_letters"] = assessment.FalseLetters,
        },
        ["tubes"] = new JsonObject
        {
            ["true"] = assessment.TubesTrue,
            ["found"] = assessment.TubesFound,
            ["imagined"] = assessment.TubesImagined,
            ["diameter_relative_error"] = Of(assessment.Diameter),
            ["axis_error_deg"] = Of(assessment.Axis),
        },
        ["letter_boxes"] = new JsonObject
        {
            ["letters"] = assessment.Boxes.Length,
            ["mean_overlap"] = assessment.Boxes.Length == 0 ? null : assessment.Boxes.Average(),
        },
        ["calibration"] = assessment.Calibration is not { } calibration ? null : new JsonObject
        {
            ["letters"] = calibration.Letters,
            ["right"] = calibration.Right,
            ["expected_calibration_error"] = calibration.ExpectedError,
            ["mean_probability"] = calibration.MeanProbability,
        },
        ["kept"] = new JsonArray([.. assessment.Kept.Select(point => (JsonNode)new JsonObject { ["from"] = point.From, ["kept"] = point.Kept, ["wrong"] = point.Wrong, ["letters"] = point.Letters })]),
        ["cells"] = new JsonObject
        {
            ["measured"] = assessment.Measured,
            ["not_measured"] = assessment.NotMeasured,
            ["within_expanded_uncertainty"] = assessment.Covered,
            ["relative_error"] = new JsonObject(assessment.Cells.Select(group => new System.Collections.Generic.KeyValuePair<string, JsonNode?>(group.Group, Of(group.Errors)))),
        },
        ["seconds"] = Of(assessment.Seconds),
        ["not_used"] = new JsonArray([.. assessment.Failures.Select(failure => (JsonNode)failure)]),
    }.ToJsonString(Indented);

    private static JsonNode Of(TextFigures group) => new JsonObject
    {
        ["group"] = group.Group,
        ["photos"] = group.Photos,
        ["letters"] = group.Letters,
        ["edits"] = group.Edits,
        ["edits_ignoring_case"] = group.EditsIgnoringCase,
        ["letters_without_spaces"] = group.LettersNoSpaces,
        ["edits_without_spaces"] = group.EditsNoSpaces,
        ["letters_visible"] = group.LettersVisible,
        ["edits_visible"] = group.EditsVisible,
        ["words"] = group.Words,
        ["words_right"] = group.WordsRight,
        ["lines"] = group.Lines,
        ["lines_right"] = group.LinesRight,
        ["name_words"] = group.NameWords,
        ["name_words_right"] = group.NameWordsRight,
        ["variants"] = group.Variants,
        ["variants_kept"] = group.Fates(VariantFate.Kept),
        ["variants_corrected"] = group.Fates(VariantFate.Corrected),
        ["variants_misread"] = group.Fates(VariantFate.Misread),
    };

    private static JsonObject? Of(Spread? spread) => spread is null ? null : new JsonObject
    {
        ["count"] = spread.Count,
        ["median"] = spread.Median,
        ["percentile_95"] = spread.Percentile95,
        ["largest"] = spread.Largest,
    };
}
