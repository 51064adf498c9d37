using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;

namespace InscriptionLab.Exchange;

/// <summary>
/// Parts a data set into training, validation and test so that nothing leaks: all marks of an object fall into one part, and so do objects
/// that are tied together, because a photo of one looks nearly the same as a photo of the other.
/// </summary>
internal sealed class DatasetSplit
{
    internal const string Training = "train";
    internal const string Validation = "validation";
    internal const string Test = "test";

    /// <summary>Of a hundred ties of objects, how many fall into training and validation; the rest is test (80, 10, 10: common practice).</summary>
    private const int TrainingShare = 80;

    private const int ValidationShare = 10;

    /// <summary>Gets the names of the parts, the largest first.</summary>
    internal static ImmutableArray<string> Names { get; } = [Training, Validation, Test];

    private readonly Dictionary<string, string> _parts = new(StringComparer.Ordinal);

    /// <summary>Parts objects.</summary>
    /// <param name="objects">Names of the objects.</param>
    /// <param name="ties">Pairs of objects that must stay together.</param>
    /// <param name="seed">Changes who falls where; the same seed gives the same parts whatever else is in the catalogue.</param>
    internal DatasetSplit(IEnumerable<string> objects, IEnumerable<(string One, string Other)> ties, int seed)
    {
        var first = objects.Distinct(StringComparer.Ordinal).ToDictionary(key => key, key => key, StringComparer.Ordinal);
        foreach (var (one, other) in ties)
        {
            var (left, right) = (Root(first, one), Root(first, other));
            var (low, high) = string.CompareOrdinal(left, right) <= 0 ? (left, right) : (right, left);
            first[high] = low;
        }

        foreach (var key in first.Keys)
        {
            _parts[key] = PartOf(Root(first, key), seed);
        }
    }

    /// <summary>Gives the part of an object.</summary>
    internal string Of(string key) => _parts[key];

    private static string PartOf(string key, int seed)
    {
        var number = Convert.ToInt32(Cataloguing.Fingerprint.OfText(string.Create(CultureInfo.InvariantCulture, $"{seed}\n{key}"))[..6], 16) % 100;
        return number < TrainingShare ? Training : number < TrainingShare + ValidationShare ? Validation : Test;
    }

    private static string Root(Dictionary<string, string> first, string key)
    {
        while (first[key] != key)
        {
            key = first[key];
        }

        return key;
    }
}
