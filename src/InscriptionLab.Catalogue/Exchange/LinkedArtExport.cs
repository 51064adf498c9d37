using System;
using System.Linq;
using System.Text.Json.Nodes;

namespace InscriptionLab.Exchange;

/// <summary>One object as Linked Art 1.0 JSON-LD: each measurement a value with its limits, the lettering as a statement, and who measured when.</summary>
/// <param name="baseAddress">Address under which the objects will be published.</param>
internal sealed class LinkedArtExport(Uri baseAddress)
{
    private const string Context = "https://linked.art/ns/v1/linked-art.json";

    // Terms of the Getty Art & Architecture Thesaurus. 300028705, 300055647 and 300053578 were looked up; the others are from memory.
    private static readonly (string Number, string Label) Inscription = ("300028705", "Marks and inscriptions");
    private static readonly (string Number, string Label) Measuring = ("300053578", "Measuring");
    private static readonly (string Number, string Label) Diameter = ("300055624", "Diameter");
    private static readonly (string Number, string Label) Millimetre = ("300379097", "Millimeters");
    private static readonly (string Number, string Label) Description = ("300435430", "Dimensions statement");
    private static readonly (string Number, string Label) Physical = ("300435452", "Physical Description");
    private static readonly (string Number, string Label) Brass = ("300010946", "Brass");

    internal string Of(ExchangeObject shown) => ExchangeText.Json(new JsonObject
    {
        ["@context"] = Context,
        ["id"] = new Uri(baseAddress, "object/" + Uri.EscapeDataString(shown.Key)).AbsoluteUri,
        ["type"] = "HumanMadeObject",
        ["_label"] = shown.ShownTitle,
        ["identified_by"] = new JsonArray(
            new JsonObject { ["type"] = "Name", ["content"] = shown.ShownTitle },
            new JsonObject { ["type"] = "Identifier", ["content"] = shown.Key }),
        ["referred_to_by"] = new JsonArray([.. shown.Photos.Where(photo => photo.Reading is not null).SelectMany(photo => photo.Reading!.Lines.SelectMany(line => Statements(photo, line))).Concat(shown.Observations.Select(Observed))]),
        ["made_of"] = new JsonArray(Term(Brass, "Material")),
        ["dimension"] = new JsonArray([.. shown.Measurements.Select(Dimension)]),
    });

    private static System.Collections.Generic.IEnumerable<JsonNode> Statements(ExchangePhoto photo, ExchangeLine line)
    {
        yield return Statement(Inscription, line.Read, $"Line {line.Position + 1} as a program read it in photograph {photo.Sha256}; ? stands for a letter that is cut but cannot be seen");
        if (line.Correction is { } correction)
        {
            yield return Statement(Inscription, correction.Text, $"Line {line.Position + 1} as {correction.By} reads it, {ExchangeText.Day(correction.At)}");
        }
    }

    private static JsonNode Observed(Cataloguing.ObservationEntry seen) =>
        Statement(Physical, ObservationWords.Whole(seen), $"{ObservationWords.Of(seen)}, as {seen.By} saw it on the object");

    private static JsonObject Dimension((ExchangeExamination Examination, Cataloguing.MeasurementEntry Measured) item) => new()
    {
        ["type"] = "Dimension",
        ["_label"] = $"Diameter, {item.Measured.Role}",
        ["classified_as"] = new JsonArray(Term(Diameter, "Type")),
        ["value"] = Math.Round(item.Measured.ValueMm, 4),
        ["lower_value_limit"] = Math.Round(item.Measured.ValueMm - item.Measured.ExpandedMm, 4),
        ["upper_value_limit"] = Math.Round(item.Measured.ValueMm + item.Measured.ExpandedMm, 4),
        ["unit"] = Term(Millimetre, "MeasurementUnit"),
        ["assigned_by"] = new JsonArray(new JsonObject
        {
            ["type"] = "AttributeAssignment",
            ["_label"] = $"Measured from a photograph by {item.Examination.Versions.Program}",
            ["classified_as"] = new JsonArray(Term(Measuring, "Type")),
            ["timespan"] = new JsonObject
            {
                ["type"] = "TimeSpan",
                ["begin_of_the_begin"] = ExchangeText.Moment(item.Examination.MadeAt),
                ["end_of_the_end"] = ExchangeText.Moment(item.Examination.MadeAt),
            },
            ["referred_to_by"] = new JsonArray(Statement(Description, item.Measured.Statement, "The result in the words of the GUM")),
        }),
    };

    private static JsonObject Statement((string Number, string Label) type, string content, string label) => new()
    {
        ["type"] = "LinguisticObject",
        ["_label"] = label,
        ["classified_as"] = new JsonArray(Term(type, "Type")),
        ["content"] = content,
    };

    private static JsonObject Term((string Number, string Label) term, string type) => new()
    {
        ["id"] = "http://vocab.getty.edu/aat/" + term.Number,
        ["type"] = type,
        ["_label"] = term.Label,
    };
}
