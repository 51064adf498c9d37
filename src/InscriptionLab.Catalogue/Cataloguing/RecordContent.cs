using System;
using System.Collections.Immutable;
using System.Linq;
using System.Text.Json;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Cataloguing;

/// <summary>What a record says of lettering and finding: the parts that the catalogue keeps in columns of their own.</summary>
/// <param name="Outcome">agrees, differs, undecided or nothing-read; empty for a record without a finding.</param>
/// <param name="DiameterPx">Diameter of the tube in pixels; null where none was found.</param>
/// <param name="Lines">The lines.</param>
/// <param name="Nearest">Nearest forms, nearest first.</param>
/// <param name="Reasons">Reasons of the finding.</param>
/// <param name="Warnings">Sentences for the user.</param>
public sealed record RecordContent(
    string Outcome,
    double? DiameterPx,
    ImmutableArray<RecordLine> Lines,
    ImmutableArray<RecordNearest> Nearest,
    ImmutableArray<string> Reasons,
    ImmutableArray<string> Warnings)
{
    /// <summary>Reads a record.</summary>
    /// <param name="record">One JSON object.</param>
    /// <exception cref="InscriptionLabException">The text is no record of this program.</exception>
    public static RecordContent Parse(string record)
    {
        return Kept(record, root =>
        {
            var finding = Child(root, "finding");
            return new RecordContent(
                finding is { } found ? Text(found, "outcome") : string.Empty,
                Child(root, "tube") is { } tube && Child(tube, "diameter_px") is { } diameter ? diameter.GetDouble() : null,
                Each(root, "lines", RecordLine.From),
                finding is { } judged ? Each(judged, "nearest", RecordNearest.From) : [],
                finding is { } reasoned ? Each(reasoned, "reasons", reason => reason.GetString() ?? string.Empty) : [],
                Each(root, "warnings", warning => warning.GetString() ?? string.Empty));
        });
    }

    /// <summary>Reads an array that is kept as text of its own.</summary>
    /// <exception cref="InscriptionLabException">The text is none of this program.</exception>
    internal static ImmutableArray<T> Array<T>(string json, Func<JsonElement, T> read) => Kept<ImmutableArray<T>>(json, root => [.. root.EnumerateArray().Select(read)]);

    private static T Kept<T>(string json, Func<JsonElement, T> read)
    {
        try
        {
            using var document = JsonDocument.Parse(json);
            return read(document.RootElement);
        }
        catch (Exception problem) when (problem is JsonException or InvalidOperationException or FormatException)
        {
            throw new InscriptionLabException("The record is not one that this program writes: give a file made with --json.", problem);
        }
    }

    /// <summary>Gives a member that is there and not null.</summary>
    internal static JsonElement? Child(JsonElement element, string name) =>
        element.TryGetProperty(name, out var child) && child.ValueKind != JsonValueKind.Null ? child : null;

    /// <summary>Gives a member's text, empty where it is missing.</summary>
    internal static string Text(JsonElement element, string name) => Child(element, name)?.GetString() ?? string.Empty;

    /// <summary>Reads each element of an array member; none where it is missing.</summary>
    internal static ImmutableArray<T> Each<T>(JsonElement element, string name, Func<JsonElement, T> read) =>
        Child(element, name) is { } array ? [.. array.EnumerateArray().Select(read)] : [];
}
