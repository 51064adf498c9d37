using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Core.Tests.Comparison;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.References;

namespace InscriptionLab.Core.Tests.Evidence;

/// <summary>
/// A world of invented houses with their own marks, trade copies of their time and modern reproductions. How often each kind does what is fixed
/// here, once, and was not fitted to the weights of the program: one in twenty-five of the houses' own marks is spelt otherwise, half the copies spell rightly, and so on.
/// </summary>


internal sealed class SimulatedWorld
{
    private static readonly string[] Onsets = "b br c cr d dr f fr g gr h k l m n p pr r s st t th tr v w".Split(' ');
    private static readonly string[] Nuclei = "a e i o u ai ea ou ow".Split(' ');
    private static readonly string[] Codas = "ck d ll n nd rn ss st t th m sh ld".Split(' ');
    private static readonly string[] Endings = "by ham ridge well worth hill more wick grave".Split(' ');
    private static readonly string[] Styles = ["roman", "italic", "script", "sans", "didone", "blackletter"];

    private readonly Random _random;
    private readonly ReaderNoise _noise;
    private readonly ImmutableArray<House> _houses;
    private readonly Comparer _comparer;
    private readonly EvidenceWeigher _weigher;
    private readonly Judge _judge = new();

    internal SimulatedWorld(int seed, int houses, int leastHeight)
    {
        _random = new Random(seed);
        _noise = new ReaderNoise(_random, leastHeight);
        _houses = [.. Enumerable.Range(0, houses).Select(_ => NewHouse()).DistinctBy(house => house.Name)];
        List = new ReferenceList("a simulated world", string.Empty, [.. _houses.SelectMany(Rows)]);
        _comparer = new Comparer(List);
        _weigher = new EvidenceWeigher(List, null, _comparer);
    }

    internal ReferenceList List { get; }

    /// <summary>Gets the number of letters that the noise is drawn from.</summary>
    internal int Measured => _noise.Measured;

    /// <summary>Makes a piece, reads it with the reader's confusions, and weighs it.</summary>
    internal SimulatedCase Next()
    {
        var house = _houses[_random.Next(_houses.Length)];
        var truth = (Proposition)_random.Next(3);
        var piece = truth switch
        {
            Proposition.House => Own(house),
            Proposition.PeriodOther => Copy(house),
            _ => Reproduction(house),
        };
        var lines = piece.Lines.Select(_noise.Read).ToArray();
        var reading = Fabricated.Of(lines) with { Style = [new StyleCandidate(piece.Style, Probability.From(0.9))] };
        var finding = _judge.Decide(_comparer.Compare(reading));
        return new SimulatedCase(house.Name, truth, piece.Lines[0], string.Join(' ', piece.Lines), piece.Year, reading, finding, _weigher.Weigh(reading, finding, Circumstances.None with { Prior = PriorOdds.Parse("1:1:1") }));
    }

    private bool Chance(double probability) => _random.NextDouble() < probability;

    private static T One<T>(IReadOnlyList<T> from, Random random) => from[random.Next(from.Count)];

    private House NewHouse()
    {
        var name = One(Onsets, _random) + One(Nuclei, _random) + One(Codas, _random) + (Chance(0.5) ? One(Nuclei, _random) + One(Codas, _random) : string.Empty) + One(Endings, _random);
        var spelt = char.ToUpperInvariant(name[0]) + name[1..];
        var from = _random.Next(1770, 1850);
        return new House(spelt, One(Styles, _random), from, from + _random.Next(15, 45), $"{_random.Next(1, 60)}, {char.ToUpperInvariant(name[0])}{One(Nuclei, _random)}{One(Codas, _random)} Lane", Misspelt(spelt), _random.Next(1, 12));
    }

    private static IEnumerable<ReferenceForm> Rows(House house)
    {
        ReferenceForm Row(string form, AttestationStatus status) => new(form, house.Name, status)
        {
            Style = status == AttestationStatus.Attested ? house.Style : null,
            Address = status == AttestationStatus.Attested ? house.Address : null,
            From = status == AttestationStatus.Reproduction ? null : house.From,
            To = status == AttestationStatus.Reproduction ? null : house.To,
            Source = "simulated",
            Certainty = FormCertainty.Certain,
        };
        yield return Row(house.Name, AttestationStatus.Attested);
        yield return Row(house.Name.ToUpperInvariant(), AttestationStatus.Attested);
        for (var sighting = 0; sighting < house.Sightings; sighting++)
        {
            yield return Row(house.Name, AttestationStatus.Attested) with { Note = "another piece" };
        }

        yield return Row(house.ListedCopy, AttestationStatus.PeriodCopy);
        yield return Row($"{house.Name.ToUpperInvariant()} LONDON 1785", AttestationStatus.Reproduction);
    }

    private Piece Own(House house)
    {
        var spelling = Chance(0.04) ? Misspelt(house.Name) : house.Name;
        return new Piece(Chance(0.5) ? [Cased(spelling), house.Address] : [Cased(spelling)], Chance(0.75) ? house.Style : One(Styles, _random), _random.Next(house.From, house.To + 1));
    }

    private Piece Copy(House house)
    {
        var spelling = Chance(0.5) ? house.Name : Chance(0.4) ? house.ListedCopy : Misspelt(house.Name);
        var address = Chance(0.15) ? house.Address : Chance(0.3) ? One(_houses, _random).Address : null;
        return new Piece(address is null ? [Cased(spelling)] : [Cased(spelling), address], Chance(0.3) ? house.Style : One(Styles, _random), _random.Next(house.From, house.To + 30));
    }

    private Piece Reproduction(House house)
    {
        var capitals = house.Name.ToUpperInvariant();
        ImmutableArray<string> lines = _random.Next(4) switch
        {
            0 => [$"{capitals} LONDON 1785"],
            1 => [capitals, "LONDON", $"{_random.Next(1750, 1915)}"],
            2 => [Cased(Misspelt(house.Name))],
            _ => [Cased(house.Name)],
        };
        return new Piece(Chance(0.2) ? lines.Add("MADE IN ENGLAND") : lines, Chance(0.5) ? "sans" : One(Styles, _random), _random.Next(1930, 1980));
    }

    private string Cased(string text) => Chance(0.4) ? text.ToUpperInvariant() : text;

    /// <summary>One letter inside the name replaced, doubled or left out.</summary>
    private string Misspelt(string name)
    {
        var index = _random.Next(1, name.Length - 1);
        var vowels = "aeiou";
        return _random.Next(3) switch
        {
            0 => name.Remove(index, 1),
            1 => name.Insert(index, name[index].ToString()),
            _ when vowels.Contains(name[index], StringComparison.Ordinal) => name[..index] + vowels[(vowels.IndexOf(name[index], StringComparison.Ordinal) + _random.Next(1, 5)) % 5] + name[(index + 1)..],
            _ => name[..index] + (name[index] == 'n' ? 'm' : 'n') + name[(index + 1)..],
        };
    }

    private sealed record House(string Name, string Style, int From, int To, string Address, string ListedCopy, int Sightings);

    private sealed record Piece(ImmutableArray<string> Lines, string Style, int Year);
}
