using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Security.Cryptography;
using System.Text.Json;
using InscriptionLab.Outcomes;
using InscriptionLab.Vision.Native;

namespace InscriptionLab.Vision.Models;

/// <summary>The models folder: models.json says what belongs there, and nothing else is loaded.</summary>
public sealed class ModelShelf
{
    private const string Index = "models.json";

    private readonly string _folder;
    private readonly Dictionary<string, ModelCard> _cards;

    /// <summary>Opens the folder and reads its index; no model is loaded yet.</summary>
    /// <param name="folder">The models folder.</param>
    /// <exception cref="InscriptionLabException">The index is absent or cannot be understood.</exception>
    public ModelShelf(string folder)
    {
        ArgumentException.ThrowIfNullOrEmpty(folder);
        _folder = folder;
        var index = Path.Combine(folder, Index);
        if (!File.Exists(index))
        {
            throw new InscriptionLabException($"{index}: the list of models is not there; put back the models folder that belongs to this version.");
        }

        try
        {
            using var document = JsonDocument.Parse(File.ReadAllBytes(index));
            _cards = document.RootElement.GetProperty("models").EnumerateObject().Select(entry => Card(entry.Value)).ToDictionary(card => card.File, StringComparer.Ordinal);
        }
        catch (Exception cause) when (cause is JsonException or KeyNotFoundException or InvalidOperationException or FormatException or ArgumentException)
        {
            throw new InscriptionLabException($"{index}: the list of models cannot be understood; put back the models folder that belongs to this version.", cause);
        }
    }

    /// <summary>Tells whether the index names a model: not every build of the models folder holds all of them.</summary>
    internal bool Lists(string file) => _cards.ContainsKey(file);

    /// <summary>Gives what the index says of a model.</summary>
    internal ModelCard Card(string file) => _cards.TryGetValue(file, out var card)
        ? card
        : throw new InscriptionLabException($"{Path.Combine(_folder, Index)}: {file} is not listed; put back the models folder that belongs to this version.");

    /// <summary>Loads a model after checking its bytes against the index.</summary>
    internal OnnxNetwork Open(string file, (string Name, ImmutableArray<int> Axes) input, IReadOnlyList<string> outputs)
    {
        var card = Card(file);
        var path = Path.Combine(_folder, file);
        if (!File.Exists(path))
        {
            throw new InscriptionLabException($"{path}: the model is not there; put back the models folder that belongs to this version.");
        }

        var bytes = File.ReadAllBytes(path);
        if (!string.Equals(Convert.ToHexString(SHA256.HashData(bytes)), card.Sha256, StringComparison.OrdinalIgnoreCase))
        {
            throw new InscriptionLabException($"{path}: the model was changed or is damaged (its SHA-256 is not the one in {Index}); copy it again from this version.");
        }

        return new OnnxNetwork(path, bytes, input, outputs);
    }

    private static ModelCard Card(JsonElement entry) => new(
        entry.GetProperty("file").GetString()!,
        entry.GetProperty("sha256").GetString()!,
        Strings(entry, "classes"),
        entry.TryGetProperty("blank_index", out var blank) ? blank.GetInt32() : 0,
        entry.TryGetProperty("outputs", out var outputs) && outputs.TryGetProperty("style", out var style) ? Strings(style, "classes") : [],
        entry.TryGetProperty("temperature", out var temperature) ? temperature.GetDouble() : 1);

    private static ImmutableArray<string> Strings(JsonElement entry, string name) =>
        entry.TryGetProperty(name, out var array) ? [.. array.EnumerateArray().Select(item => item.GetString()!)] : [];
}
