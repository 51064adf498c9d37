using System;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Text.Json;
using InscriptionLab.App.Reports;

namespace InscriptionLab.App;

/// <summary>The folder of models beside the program.</summary>
internal static class ModelFolder
{
    private const string Name = "models";
    private const string Index = "models.json";

    /// <summary>Gets the folder; whether it is complete is for the stage that opens it to say.</summary>
    internal static string Path { get; } = System.IO.Path.Combine(AppContext.BaseDirectory, Name);

    /// <summary>Gets a value indicating whether there is a list of models.</summary>
    internal static bool Present => File.Exists(System.IO.Path.Combine(Path, Index));

    /// <summary>Gives file name and hash of each model on the list; none where there is no list.</summary>
    internal static ImmutableArray<ModelFact> Facts()
    {
        if (!Present)
        {
            return [];
        }

        using var index = JsonDocument.Parse(File.ReadAllBytes(System.IO.Path.Combine(Path, Index)));
        return [.. index.RootElement.GetProperty("models").EnumerateObject()
            .Select(model => new ModelFact(model.Value.GetProperty("file").GetString() ?? string.Empty, model.Value.GetProperty("sha256").GetString() ?? string.Empty))];
    }
}
