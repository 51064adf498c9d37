using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.Json;
using InscriptionLab.App.Records;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Assess;

/// <summary>Predictions as the JSON Lines that <c>examine --json</c> and <c>measure --json</c> write.</summary>
internal static class PredictionFile
{
    /// <summary>Reads lines of both commands, in any order.</summary>
    internal static Predictions Read(string file)
    {
        try
        {
            var lines = File.ReadLines(file).Where(line => line.Trim().Length > 0).Select(line => (Line: line, Names: NamesOf(line))).ToList();
            return new Predictions(
                [.. lines.Where(line => line.Names.Contains("sha256")).Select(line => JsonLines.PhotoOf(line.Line))],
                [.. lines.Where(line => line.Names.Contains("set")).Select(line => JsonLines.SetOf(line.Line))],
                [.. lines.Where(line => line.Names.Contains("circles")).Select(line => JsonLines.MeasureOf(line.Line))],
                [],
                []);
        }
        catch (System.Exception problem) when (problem is JsonException or IOException)
        {
            throw new InscriptionLabException($"{file}: these are no JSON Lines of examine or measure; give the file that --json wrote.", problem);
        }
    }

    internal static void Write(string file, Predictions predictions) => File.WriteAllLines(file, Lines(predictions));

    internal static IEnumerable<string> Lines(Predictions predictions) =>
        predictions.Photos.Select(JsonLines.LineOf).Concat(predictions.Sets.Select(JsonLines.LineOf)).Concat(predictions.Cells.Select(JsonLines.LineOf));

    private static HashSet<string> NamesOf(string line)
    {
        using var parsed = JsonDocument.Parse(line);
        return [.. parsed.RootElement.EnumerateObject().Select(property => property.Name)];
    }
}
