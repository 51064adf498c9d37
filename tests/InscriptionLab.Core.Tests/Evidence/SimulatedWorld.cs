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
    /// <summary>How often a house misspells itself, cuts its address, and uses its usual style.</summary>
    internal const double OwnMisspelt = 0.04;

    internal const double OwnAddress = 0.5;
    internal const double OwnStyle = 0.75;

    /// <summary>How often a copy spells rightly, and otherwise as the copy that is listed; has the house's address, and otherwise any house's; uses the house's style.</summary>
    internal const double CopyRight = 0.5;

    internal const double CopyAsListed = 0.4;
    internal const double CopyOwnAddress = 0.15;
    internal const double CopyAnyAddress = 0.3;
    internal const double CopiedStyle = 0.3;

    /// <summary>How often a reproduction says where it was made, and is in sans; the years that it may claim.</summary>
    internal const double ModernMadeIn = 0.2;

    internal const double ModernSans = 0.5;
    internal const int LegendYears = LastLegendYear - FirstLegendYear;
    internal const string MadeIn = "MADE IN ENGLAND";

    /// <summary>How often any mark is in capitals.</summary>
    internal const double Capitals = 0.4;

    private const int FirstLegendYear = 1750;
    private const int LastLegendYear = 1915;

    private static readonly string[] Onsets = "b br c cr d dr f fr g gr h k l m n p pr r s st t th tr v w".Split(' ');
    private static readonly string[] Nuclei = "a e i o u ai ea ou ow".Split(' ');
    private static readonly string[] Codas = "ck d ll n nd rn ss st t th m sh ld".Split(' ');
    private static readonly string[] Endings = "by ham ridge well worth hill more wick grave".Split(' ');
    internal static readonly string[] Styles = ["roman", "italic", "script", "sans", "didone", "blackletter"];

    private readonly Random _random;
    private readonly ReaderNoise _noise;
    private readonly ImmutableArray<SimulatedHouse> _houses;
    private readonly Comparer _comparer;
    private readonly EvidenceWeigher _weigher;
    private readonly Judge _judge = new();
    private readonly WorldOracle _oracle;

    internal SimulatedWorld(int seed, int houses, int leastHeight)
    {
        _random = new Random(seed);
        _noise = new ReaderNoise(_random, leastHeight);
        _houses = [.. Enumerable.Range(0, houses).Select(_ => NewHouse()).DistinctBy(house => house.Name)];
        List = new ReferenceList("a simulated world", string.Empty, [.. _houses.SelectMany(Rows)]);
        _oracle = new WorldOracle(_houses);
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
        return new SimulatedCase(house.Name, truth, piece.Lines[0], string.Join(' ', piece.Lines), piece.Year, reading, finding, _weigher.Weigh(reading, finding, Circumstances.None with { Prior = PriorOdds.Parse("1:1:1") }))
        {
            KnownCut = _oracle.Ratio(house, piece, text => text == piece.Lines[0] ? 1 : 0),
            KnownRead = _oracle.Ratio(house, piece, text => WorldOracle.OfReading(lines[0], text)),
        };
    }

    /// <summary>Gives the legend of modern pieces that the list knows.</summary>
    internal static string Legend(string capitals) => $"{capitals} LONDON 1785";

    private bool Chance(double probability) => _random.NextDouble() < probability;

    private static T One<T>(IReadOnlyList<T> from, Random random) => from[random.Next(from.Count)];

    private SimulatedHouse NewHouse()
    {
        var name = One(Onsets, _random) + One(Nuclei, _random) + One(Codas, _random) + (Chance(0.5) ? One(Nuclei, _random) + One(Codas, _random) : string.Empty) + One(Endings, _random);
        var spelt = char.ToUpperInvariant(name[0]) + name[1..];
        var from = _random.Next(1770, 1850);
        return new SimulatedHouse(spelt, One(Styles, _random), from, from + _random.Next(15, 45), $"{_random.Next(1, 60)}, {char.ToUpperInvariant(name[0])}{One(Nuclei, _random)}{One(Codas, _random)} Lane", Misspelt(spelt), _random.Next(1, 12));
    }

    private static IEnumerable<ReferenceForm> Rows(SimulatedHouse house)
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
        yield return Row(Legend(house.Name.ToUpperInvariant()), AttestationStatus.Reproduction);
    }

    private SimulatedPiece Own(SimulatedHouse house)
    {
        var spelling = Chance(OwnMisspelt) ? Misspelt(house.Name) : house.Name;
        return new SimulatedPiece(Chance(OwnAddress) ? [Cased(spelling), house.Address] : [Cased(spelling)], Chance(OwnStyle) ? house.Style : One(Styles, _random), _random.Next(house.From, house.To + 1));
    }

    private SimulatedPiece Copy(SimulatedHouse house)
    {
        var spelling = Chance(CopyRight) ? house.Name : Chance(CopyAsListed) ? house.ListedCopy : Misspelt(house.Name);
        var address = Chance(CopyOwnAddress) ? house.Address : Chance(CopyAnyAddress) ? One(_houses, _random).Address : null;
        return new SimulatedPiece(address is null ? [Cased(spelling)] : [Cased(spelling), address], Chance(CopiedStyle) ? house.Style : One(Styles, _random), _random.Next(house.From, house.To + 30));
    }

    private SimulatedPiece Reproduction(SimulatedHouse house)
    {
        var capitals = house.Name.ToUpperInvariant();
        ImmutableArray<string> lines = _random.Next(4) switch
        {
            0 => [Legend(capitals)],
            1 => [capitals, "LONDON", $"{_random.Next(FirstLegendYear, LastLegendYear)}"],
            2 => [Cased(Misspelt(house.Name))],
            _ => [Cased(house.Name)],
        };
        return new SimulatedPiece(Chance(ModernMadeIn) ? lines.Add(MadeIn) : lines, Chance(ModernSans) ? "sans" : One(Styles, _random), _random.Next(1930, 1980));
    }

    private string Cased(string text) => Chance(Capitals) ? text.ToUpperInvariant() : text;

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
}
