using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using CsCheck;
using InscriptionLab.Readings;

namespace InscriptionLab.Core.Tests.Readings;

/// <summary>The slow and obvious way: walks every path through a small matrix and adds up what each spells.</summary>
internal static class EveryPath
{
    internal static ImmutableArray<string> Classes { get; } = ["", "l", "o"];

    /// <summary>Gets random matrices of 1 to 5 frames over blank, l and o.</summary>
    internal static Gen<LinePosteriors> Matrices { get; } =
        Gen.Double[-4, 4].Array[3].Array[1, 5].Select(rows => Of(rows.Select(row => row.Select(Math.Exp).ToArray()).ToArray()));

    /// <summary>Makes posteriors of weights, blank first; each frame is made to sum to 1.</summary>
    internal static LinePosteriors Of(params double[][] frames) => new(
        Classes,
        0,
        [.. frames.SelectMany(row => row.Select(weight => (float)Math.Log(weight / row.Sum())))]);

    /// <summary>Gives the probability of every text that some path spells.</summary>
    internal static Dictionary<string, double> Sum(LinePosteriors posteriors)
    {
        var sums = new Dictionary<string, double>();
        var paths = (int)Math.Pow(Classes.Length, posteriors.Frames);
        for (var code = 0; code < paths; code++)
        {
            var (rest, probability, previous, text) = (code, 1.0, 0, string.Empty);
            for (var frame = 0; frame < posteriors.Frames; frame++)
            {
                var shown = rest % Classes.Length;
                rest /= Classes.Length;
                probability *= Math.Exp(posteriors.Frame(frame)[shown]);
                if (shown != 0 && shown != previous)
                {
                    text += Classes[shown];
                }

                previous = shown;
            }

            sums[text] = sums.GetValueOrDefault(text) + probability;
        }

        return sums;
    }
}
