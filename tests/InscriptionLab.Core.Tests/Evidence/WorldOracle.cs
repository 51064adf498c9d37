using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Readings;

namespace InscriptionLab.Core.Tests.Evidence;

/// <summary>
/// What somebody would make of a piece who knew how often each kind of maker in the simulated world does what, to whom the program's weights can be held: the exact
/// probability of what is cut under each proposition, the house being known. No method can do better on the same pieces.
/// </summary>
/// <param name="houses">All houses of the world.</param>
internal sealed class WorldOracle(IReadOnlyList<SimulatedHouse> houses)
{
    private const string Vowels = "aeiou";

    /// <summary>Gives the ratio of the house to the other two, each as likely as the other.</summary>
    /// <param name="house">The house.</param>
    /// <param name="piece">The piece.</param>
    /// <param name="firstLine">How probable what was seen of the first line is, were a text cut there.</param>
    internal double Ratio(SimulatedHouse house, SimulatedPiece piece, Func<string, double> firstLine)
    {
        var rest = piece.Lines[1..].ToArray();
        var own = Own(house, rest, firstLine) * Style(piece, house.Style, SimulatedWorld.OwnStyle);
        var copy = Copy(house, rest, firstLine) * Style(piece, house.Style, SimulatedWorld.CopiedStyle);
        var modern = Reproduction(house, rest, firstLine) * Style(piece, "sans", SimulatedWorld.ModernSans);
        return own / ((copy + modern) / 2);
    }

    /// <summary>Gives how probable a reading of a line is were a text cut, its letters' probabilities taken as they are stated; a letter missing or too many as the program's reader overlooks them.</summary>
    internal static double OfReading(LineReading line, string text)
    {
        const double Overlooked = 0.005;
        const double Floor = 1e-4;
        var cut = Comparison.Fabricated.Clusters(text);
        var letters = line.Letters;
        double[][] reached = [.. Enumerable.Range(0, letters.Length + 1).Select(_ => new double[cut.Length + 1])];
        reached[0][0] = 1;
        for (var at = 0; at <= letters.Length; at++)
        {
            for (var letter = 0; letter <= cut.Length; letter++)
            {
                reached[at][letter] += at > 0 ? reached[at - 1][letter] * Overlooked : 0;
                reached[at][letter] += letter > 0 ? reached[at][letter - 1] * Overlooked : 0;
                reached[at][letter] += at > 0 && letter > 0 ? reached[at - 1][letter - 1] * Stated(letters[at - 1], cut[letter - 1]) : 0;
            }
        }

        return reached[letters.Length][cut.Length];

        static double Stated(Letter read, string character) => Math.Max(Floor, read.Character == character ? read.Probability.Value : read.Alternatives.FirstOrDefault(other => other.Character == character)?.Probability.Value ?? 0);
    }

    private static double Style(SimulatedPiece piece, string usual, double share) => (piece.Style == usual ? share : 0) + ((1 - share) / SimulatedWorld.Styles.Length);

    private static double Own(SimulatedHouse house, string[] rest, Func<string, double> firstLine)
    {
        var spelt = ((1 - SimulatedWorld.OwnMisspelt) * Cased(house.Name, firstLine)) + (SimulatedWorld.OwnMisspelt * Misspelt(house.Name, firstLine));
        return spelt * (rest.Length == 0 ? 1 - SimulatedWorld.OwnAddress : rest is [var address] && address == house.Address ? SimulatedWorld.OwnAddress : 0);
    }

    private double Copy(SimulatedHouse house, string[] rest, Func<string, double> firstLine)
    {
        var wrong = 1 - SimulatedWorld.CopyRight;
        var spelt = (SimulatedWorld.CopyRight * Cased(house.Name, firstLine))
            + (wrong * SimulatedWorld.CopyAsListed * Cased(house.ListedCopy, firstLine))
            + (wrong * (1 - SimulatedWorld.CopyAsListed) * Misspelt(house.Name, firstLine));
        var (none, any) = ((1 - SimulatedWorld.CopyOwnAddress) * (1 - SimulatedWorld.CopyAnyAddress), (1 - SimulatedWorld.CopyOwnAddress) * SimulatedWorld.CopyAnyAddress);
        return spelt * rest switch
        {
            [] => none,
            [var address] => (address == house.Address ? SimulatedWorld.CopyOwnAddress : 0) + (any * houses.Count(other => other.Address == address) / houses.Count),
            _ => 0,
        };
    }

    private static double Reproduction(SimulatedHouse house, string[] rest, Func<string, double> firstLine)
    {
        var madeIn = rest is [.., SimulatedWorld.MadeIn];
        var before = madeIn ? rest[..^1] : rest;
        var capitals = house.Name.ToUpperInvariant();
        var legend = before switch
        {
            [] => firstLine(SimulatedWorld.Legend(capitals)) + Misspelt(house.Name, firstLine) + Cased(house.Name, firstLine),
            ["LONDON", _] => firstLine(capitals) / SimulatedWorld.LegendYears,
            _ => 0,
        };
        return legend / 4 * (madeIn ? SimulatedWorld.ModernMadeIn : 1 - SimulatedWorld.ModernMadeIn);
    }

    private static double Cased(string text, Func<string, double> firstLine) => (SimulatedWorld.Capitals * firstLine(text.ToUpperInvariant())) + ((1 - SimulatedWorld.Capitals) * firstLine(text));

    private static double Misspelt(string name, Func<string, double> firstLine) =>
        Enumerable.Range(1, name.Length - 2).Average(index => Misspellings(name, index).Sum(spelling => spelling.Share * Cased(spelling.Text, firstLine)));

    /// <summary>The ways in which the world misspells at a letter: left out, doubled, another vowel, m or n for a consonant.</summary>
    private static IEnumerable<(string Text, double Share)> Misspellings(string name, int index)
    {
        const double Kind = 1.0 / 3;
        yield return (name.Remove(index, 1), Kind);
        yield return (name.Insert(index, name[index].ToString()), Kind);
        string[] others = Vowels.Contains(name[index], StringComparison.Ordinal) ? [.. Vowels.Where(vowel => vowel != name[index]).Select(vowel => vowel.ToString())] : [name[index] == 'n' ? "m" : "n"];
        foreach (var other in others)
        {
            yield return (name[..index] + other + name[(index + 1)..], Kind / others.Length);
        }
    }
}
