using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Text.Json;
using InscriptionLab.Core.Tests.Comparison;
using InscriptionLab.Measures;
using InscriptionLab.Readings;

namespace InscriptionLab.Core.Tests.Evidence;

/// <summary>
/// What the program's reader made of letters of known truth, measured once on rendered photos at several sizes (reader-sightings-14px.json and -20px.json, for
/// lettering whose x is at least so high: for each letter cut, what was read with what probability and which rivals; nothing where it was overlooked inside a line). A letter of the simulated world is read as one of these was.
/// </summary>
/// <param name="random">Draws the sightings.</param>
/// <param name="leastHeight">14 or 20, in pixels.</param>
internal sealed class ReaderNoise(Random random, int leastHeight)
{
    private readonly Dictionary<string, ImmutableArray<Letter?>> _sightings = Load(leastHeight);

    private (string Cut, Letter? Seen)[]? _any;

    /// <summary>Gets the number of letters that were measured.</summary>
    internal int Measured => Any.Length;

    private (string Cut, Letter? Seen)[] Any => _any ??= [.. _sightings.SelectMany(letters => letters.Value.Select(seen => (letters.Key, seen)))];

    /// <summary>A box as high as the smallest letters that were measured.</summary>
    private Quad Box => new(new PixelPoint(0, 0), new PixelPoint(10, 0), new PixelPoint(10, leastHeight), new PixelPoint(0, leastHeight));

    internal LineReading Read(string cut) => Fabricated.Line([.. Fabricated.Clusters(cut).Select(Seen).OfType<Letter>().Select(letter => letter with { InPhoto = Box })]);

    /// <summary>A letter that was measured fewer than five times is read as any other was, itself put in that one's place.</summary>
    private Letter? Seen(string cut)
    {
        const int Enough = 5;
        if (cut == " ")
        {
            return Fabricated.Letter(cut, 0.98);
        }

        if (_sightings.TryGetValue(cut, out var own) && own.Length >= Enough)
        {
            return own[random.Next(own.Length)];
        }

        var (other, seen) = Any[random.Next(Any.Length)];
        string Put(string character) => character == other ? cut : character == cut ? other : character;
        return seen is null ? null : Fabricated.Letter(Put(seen.Character), seen.Probability.Value, [.. seen.Alternatives.Select(rival => (Put(rival.Character), rival.Probability.Value))]);
    }

    private static Dictionary<string, ImmutableArray<Letter?>> Load(int leastHeight)
    {
        using var stream = typeof(ReaderNoise).Assembly.GetManifestResourceStream(typeof(ReaderNoise), $"reader-sightings-{leastHeight}px.json")!;
        using var document = JsonDocument.Parse(stream);
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
