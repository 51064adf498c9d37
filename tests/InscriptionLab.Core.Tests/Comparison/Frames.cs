using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Readings;

namespace InscriptionLab.Core.Tests.Comparison;

/// <summary>Posteriors made by hand: for each letter one frame that shows it and one that shows the blank between letters.</summary>
internal static class Frames
{
    /// <summary>What is left for all other classes of a frame together.</summary>
    internal const double Rest = 1e-6;

    internal static ImmutableArray<string> Classes { get; } =
        ["", " ", "&", ".", .. Enumerable.Range('A', 26).Concat(Enumerable.Range('a', 26)).Select(code => ((char)code).ToString())];

    /// <summary>Makes the posteriors of a text; a place may be shared among several letters, or the blank.</summary>
    internal static LinePosteriors Of(string text, params (int Index, (string Character, double Share)[] Shares)[] shared)
    {
        var frames = new List<float>();
        for (var index = 0; index < text.Length; index++)
        {
            var shares = shared.FirstOrDefault(place => place.Index == index).Shares ?? [(text[index..(index + 1)], 1)];
            frames.AddRange(Frame(shares));
            frames.AddRange(Frame([("", 1)]));
        }

        return new LinePosteriors(Classes, 0, [.. frames]);
    }

    private static IEnumerable<float> Frame((string Character, double Share)[] shares) => Classes.Select(character =>
    {
        var share = shares.Where(entry => entry.Character == character).Sum(entry => entry.Share);
        return (float)Math.Log(((1 - Rest) * share) + (Rest / Classes.Length));
    });
}
