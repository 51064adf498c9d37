using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Text.Json;
using InscriptionLab.Core.Tests.Comparison;
using InscriptionLab.Readings;

namespace InscriptionLab.Core.Tests.Evidence;

/// <summary>
/// What the program's reader made of letters of known truth, measured once on rendered photos at three sizes (reader-sightings.json: for each letter
/// cut, what was read with what probability and which rivals; "" where it was overlooked). A letter of the simulated world is read as one of these was.
/// </summary>
/// <param name="random">Draws the sightings.</param>
internal sealed class ReaderNoise(Random random)
{
    private static readonly Dictionary<string, ImmutableArray<Letter?>> Sightings = Load();

    private static readonly ImmutableArray<Letter?> Any = [.. Sightings.Values.SelectMany(letters => letters)];

    /// <summary>Gets the number of letters that were measured.</summary>
    internal static int Measured => Any.Length;

    internal LineReading Read(string cut) => Fabricated.Line([.. Fabricated.Clusters(cut).Select(Seen).OfType<Letter>()]);

    private Letter? Seen(string cut)
    {
        if (cut is " " or "," or "." or "&")
        {
            return Fabricated.Letter(cut, 0.98);
        }

        // A letter that was never met in this case is taken in the other; one never met at all is read well.
        var seen = Sightings.GetValueOrDefault(cut) is { Length: >= 5 } enough ? enough : [];
        return seen.IsEmpty ? Fabricated.Letter(cut, 0.98) : seen[random.Next(seen.Length)];
    }

    private static Dictionary<string, ImmutableArray<Letter?>> Load()
    {
        using var stream = typeof(ReaderNoise).Assembly.GetManifestResourceStream(typeof(ReaderNoise), "reader-sightings.json")!;
        using var document = JsonDocument.Parse(new StreamReader(stream).ReadToEnd());
        return document.RootElement.EnumerateObject().ToDictionary(
            letter => letter.Name,
            letter => letter.Value.EnumerateArray().Select(Of).ToImmutableArray(),
            StringComparer.Ordinal);
    }

    private static Letter? Of(JsonElement sighting)
    {
        var entries = sighting.EnumerateArray().ToArray();
        (string, double)[] candidates = [.. Enumerable.Range(0, entries.Length / 2).Select(index => (entries[2 * index].GetString()!, entries[(2 * index) + 1].GetDouble()))];
        return candidates.Length == 0 ? null : Fabricated.Letter(candidates[0].Item1, candidates[0].Item2, candidates[1..]);
    }
}
