using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.Likeness;

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
        // In the order of their names, so that the first of those tied together does not depend on what else there is.
        string[] keys = [.. objects.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        var places = keys.Index().ToDictionary(key => key.Item, key => key.Index, StringComparer.Ordinal);
        var tied = new TiedTogether(keys.Length);
        foreach (var (one, other) in ties)
        {
            tied.Tie(places[one], places[other]);
        }

        foreach (var (key, place) in places)
        {
            _parts[key] = PartOf(keys[tied.First(place)], seed);
        }
    }

    /// <summary>Gives the part of an object.</summary>
    internal string Of(string key) => _parts[key];

    private static string PartOf(string key, int seed)
    {
        var number = Convert.ToInt32(Cataloguing.Fingerprint.OfText(string.Create(CultureInfo.InvariantCulture, $"{seed}\n{key}"))[..6], 16) % 100;
        return number < TrainingShare ? Training : number < TrainingShare + ValidationShare ? Validation : Test;
    }
}
