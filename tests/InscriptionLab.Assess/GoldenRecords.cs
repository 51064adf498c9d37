using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using System.Text.Json;

namespace InscriptionLab.Assess;

/// <summary>Holds records against those of an earlier run. Words, outcomes and the shape of a record must be the same; numbers may differ by what other processors round otherwise.</summary>
internal static class GoldenRecords
{
    /// <summary>
    /// How far a number may lie off, over its size (or over 1 where it is smaller). On one machine runs repeat to the last digit; another processor's
    /// vector instructions add in another order, in single precision (six to seven digits), and a fit passes that on a little larger.
    /// </summary>
    internal const double Tolerance = 1e-4;

    private const int Most = 40;

    /// <summary>Gives a sentence for each difference, the first ones only.</summary>
    /// <param name="golden">Lines of the earlier run.</param>
    /// <param name="now">Lines of this run, in the same order.</param>
    internal static ImmutableArray<string> Differences(IEnumerable<string> golden, IEnumerable<string> now)
    {
        var (before, after) = (golden.ToList(), now.ToList());
        var found = before.Zip(after, Differences).SelectMany(differences => differences);
        return before.Count == after.Count ? [.. found.Take(Most)] : [$"There were {before.Count} records, and there are {after.Count}.", .. found.Take(Most)];
    }

    private static List<string> Differences(string golden, string now)
    {
        using var before = JsonDocument.Parse(golden);
        using var after = JsonDocument.Parse(now);
        var found = new List<string>();
        Compare(Name(before.RootElement), before.RootElement, after.RootElement, found);
        return found;
    }

    private static string Name(JsonElement record) =>
        record.TryGetProperty("file", out var file) ? file.GetString() ?? string.Empty : record.TryGetProperty("set", out var set) ? set.GetString() ?? string.Empty : "record";

    private static void Compare(string place, JsonElement golden, JsonElement now, List<string> found)
    {
        if (golden.ValueKind != now.ValueKind)
        {
            found.Add($"{place}: was {Short(golden)}, is {Short(now)}.");
        }
        else if (golden.ValueKind == JsonValueKind.Object)
        {
            var names = golden.EnumerateObject().Select(property => property.Name).ToList();
            if (!names.SequenceEqual(now.EnumerateObject().Select(property => property.Name), StringComparer.Ordinal))
            {
                found.Add($"{place}: has other members.");
                return;
            }

            names.ForEach(name => Compare($"{place} {name}", golden.GetProperty(name), now.GetProperty(name), found));
        }
        else if (golden.ValueKind == JsonValueKind.Array)
        {
            if (golden.GetArrayLength() != now.GetArrayLength())
            {
                found.Add(string.Create(CultureInfo.InvariantCulture, $"{place}: had {golden.GetArrayLength()} entries, has {now.GetArrayLength()}."));
                return;
            }

            for (var at = 0; at < golden.GetArrayLength(); at++)
            {
                Compare(string.Create(CultureInfo.InvariantCulture, $"{place}[{at}]"), golden[at], now[at], found);
            }
        }
        else if (golden.ValueKind == JsonValueKind.Number ? !IsNear(golden.GetDouble(), now.GetDouble()) : golden.GetRawText() != now.GetRawText())
        {
            found.Add($"{place}: was {Short(golden)}, is {Short(now)}.");
        }
    }

    private static bool IsNear(double golden, double now) => Math.Abs(golden - now) <= Tolerance * Math.Max(1, Math.Abs(golden));

    private static string Short(JsonElement element) => element.GetRawText() is { Length: > 80 } text ? text[..80] + "..." : element.GetRawText();
}
