using System;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using InscriptionLab.Files;
using InscriptionLab.Outcomes;
using InscriptionLab.References;

namespace InscriptionLab.App.Listing;

/// <summary>A reference list in its file, with the history beside it. A change is written whole or not at all; the history is only ever added to.</summary>
/// <param name="file">The file; a list that is not there yet is empty.</param>
/// <param name="clock">Dates the changes.</param>
internal sealed class ListFile(string file, TimeProvider clock)
{
    private static readonly JsonSerializerOptions Readable = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly string _history = file + ".history.jsonl";

    /// <summary>Reads the list.</summary>
    /// <exception cref="InscriptionLabException">The file is no list.</exception>
    internal ReferenceList Load() => File.Exists(file)
        ? new ReferenceListReader().Read(file, File.ReadAllBytes(file)).List
        : new ReferenceList(Path.GetFileName(file), string.Empty, []);

    /// <summary>Writes the list and one line of history for each change.</summary>
    internal void Save(ReferenceList list, ImmutableArray<ReferenceChange> changes, string what, string by)
    {
        var isJson = file.EndsWith(".json", StringComparison.OrdinalIgnoreCase);
        var text = isJson ? ReferenceListWriter.Json(list.Name, list.Forms) : ReferenceListWriter.Csv(list.Forms);
        var at = clock.GetLocalNow().ToString("o", System.Globalization.CultureInfo.InvariantCulture);
        File.AppendAllLines(_history, changes.Select(change => new JsonObject
        {
            ["at"] = at,
            ["by"] = by,
            ["what"] = what,
            ["before"] = change.Before is { } before ? JsonNode.Parse(ReferenceListWriter.Row(before)) : null,
            ["after"] = JsonNode.Parse(ReferenceListWriter.Row(change.After)),
        }.ToJsonString(Readable)));
        WholeFile.Write(file, text);
    }

    /// <summary>Gives the history, oldest first.</summary>
    internal ImmutableArray<string> History() => File.Exists(_history)
        ? [.. File.ReadLines(_history).Where(line => line.Length > 0).Select(Sentence)]
        : [];

    private string Sentence(string line)
    {
        try
        {
            var change = JsonNode.Parse(line) as JsonObject ?? throw new JsonException("The line is no object.");
            var after = change["after"] as JsonObject ?? throw new JsonException("The line has no row.");
            return $"{change["at"]} {change["by"]}: {change["what"]}: {(change["before"] is null ? "added" : "filled")} '{after["form"]}' of {after["maker"]} ({after["status"]})";
        }
        catch (Exception broken) when (broken is JsonException or ArgumentException or InvalidOperationException)
        {
            throw new InscriptionLabException($"{_history}: holds a line that is no change, so it was edited by hand; put back a copy of it that was not, or move it away to begin a new one.", broken);
        }
    }
}
