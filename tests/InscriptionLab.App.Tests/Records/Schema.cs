using System.IO;
using System.Text.Json;
using Json.Schema;

namespace InscriptionLab.App.Tests.Records;

/// <summary>The schemas that the project publishes for its JSON Lines.</summary>
internal static class Schema
{
    internal static JsonSchema Examine { get; } = Load("examine.schema.json");

    internal static JsonSchema Measure { get; } = Load("measure.schema.json");

    internal static bool Accepts(this JsonSchema schema, string json)
    {
        using var document = JsonDocument.Parse(json);
        return schema.Evaluate(document.RootElement).IsValid;
    }

    private static JsonSchema Load(string name) =>
        JsonSchema.FromText(File.ReadAllText(Path.Combine(SampleImages.Root, "src", "InscriptionLab.App", "Schemas", name)));
}
