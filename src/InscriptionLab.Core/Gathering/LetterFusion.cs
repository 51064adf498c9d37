using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Readings;

namespace InscriptionLab.Gathering;

/// <summary>
/// Puts several readings of one line together. The surest reading leads; every other reading says at each of its letters what it thinks stands there, and
/// may add letters in between. At each place the logarithms of the photos' probabilities are added and divided by the number of photos to the power
/// <see cref="GathererOptions.SharedMistakes"/>, surer readings counting more (a logarithmic opinion pool: Genest and Zidek, Statistical Science 1(1), 1986).
/// </summary>
internal sealed class LetterFusion(GathererOptions options)
{
    /// <summary>Gives the joint reading of a line; its boxes are those of the leading reading.</summary>
    /// <param name="readings">Readings of one line, one a photo, at least one.</param>
    internal LineReading Fuse(IReadOnlyList<LineReading> readings)
    {
        if (readings.Count == 1)
        {
            return readings[0];
        }

        var leader = readings.MaxBy(Weight)!;
        var slots = Slots(leader, [.. readings.Where(reading => !ReferenceEquals(reading, leader))]);
        var letters = slots.Select(Decide).OfType<Letter>().ToImmutableArray();
        return leader with
        {
            Letters = letters,
            Confidence = Probability.From(letters.Aggregate(1.0, (product, letter) => product * letter.Probability.Value)),
            Posteriors = null,
            Second = null,
        };
    }

    /// <summary>Gives how much a reading knows: the letters that it may be expected to have right.</summary>
    internal static double Weight(LineReading reading) => reading.Letters.Where(letter => !letter.IsSpace).Sum(letter => letter.Probability.Value);

    /// <summary>How much a reading counts: its mean letter probability to a power, above zero.</summary>
    private double Reliability(LineReading reading)
    {
        var letters = reading.Letters.Count(letter => !letter.IsSpace);
        return Math.Pow(letters == 0 ? 0.5 : Math.Max(0.05, Weight(reading) / letters), options.Reliability);
    }

    private static FusedPlace Place(Letter letter, double weight)
    {
        var place = new FusedPlace(letter);
        place.Votes.Add((Vote(letter), weight));
        return place;
    }

    private List<FusedPlace> Slots(LineReading leader, IReadOnlyList<LineReading> others)
    {
        var places = leader.Letters.Select(letter => Place(letter, Reliability(leader))).ToList();
        var added = new SortedDictionary<(int After, int Rank), FusedPlace>();
        foreach (var other in others)
        {
            var weight = Reliability(other);
            var pairs = LetterPairing.Of(leader.Letters, other.Letters);
            var (from, to) = (pairs.FindIndex(pair => pair.Second >= 0), pairs.FindLastIndex(pair => pair.Second >= 0));
            var (last, rank) = (-1, 0);
            for (var i = 0; i < pairs.Count; i++)
            {
                var (first, second) = pairs[i];
                if (first >= 0)
                {
                    (last, rank) = (first, 0);

                    // Before its first and behind its last letter a reading says nothing: its line may have been cut short there.
                    if (i >= from && i <= to)
                    {
                        var before = i > 0 && pairs[i - 1].Second >= 0 ? other.Letters[pairs[i - 1].Second] : null;
                        var passesOverNext = i + 1 < pairs.Count && pairs[i + 1].Second < 0;
                        places[first].Votes.Add((second < 0 ? Nothing(before) : passesOverNext ? Shortened(other.Letters[second]) : Vote(other.Letters[second]), weight));
                    }
                }
                else
                {
                    Added(added, (last, rank++), other.Letters[second], leader.Letters).Votes.Add((Vote(other.Letters[second]), weight));
                }
            }
        }

        return Merge(places, added, [leader, .. others]);
    }

    private static FusedPlace Added(SortedDictionary<(int After, int Rank), FusedPlace> added, (int After, int Rank) key, Letter letter, ImmutableArray<Letter> leading)
    {
        if (!added.TryGetValue(key, out var place))
        {
            place = new FusedPlace(letter with { InPhoto = Between(leading, key.After, one => one.InPhoto), InCrop = Between(leading, key.After, one => one.InCrop) });
            added[key] = place;
        }

        return place;
    }

    /// <summary>Puts added letters behind the letter that they follow; inside the line, readings without them say that nothing stands there.</summary>
    private List<FusedPlace> Merge(List<FusedPlace> places, SortedDictionary<(int After, int Rank), FusedPlace> added, ImmutableArray<LineReading> readings)
    {
        var merged = new List<FusedPlace>();
        for (var i = -1; i < places.Count; i++)
        {
            if (i >= 0)
            {
                merged.Add(places[i]);
            }

            foreach (var place in added.Where(pair => pair.Key.After == i).Select(pair => pair.Value))
            {
                var inside = i >= 0 && i < places.Count - 1;
                var silent = readings.Sum(Reliability) - place.Votes.Sum(vote => vote.Weight);
                var silentReadings = readings.Length - place.Votes.Count;

                // The leading reading is one of the silent ones, and may list the letter behind its own as an alternative.
                place.Votes.AddRange(Enumerable.Range(0, inside ? silentReadings : 0).Select(reading => (Nothing(reading == 0 ? places[i].Letter : null), silent / silentReadings)));
                merged.Add(place);
            }
        }

        return merged;
    }

    private Letter? Decide(FusedPlace place)
    {
        var votes = place.Votes;
        var share = Math.Pow(votes.Count, 1 - options.SharedMistakes) / votes.Sum(vote => vote.Weight);
        var doubts = votes.Select(vote => Math.Max(options.LeastDoubt, 1 - vote.Says.Values.Sum()) / options.OtherLetters).ToList();
        double Pool(Func<Dictionary<string, double>, double, double> probability) => Math.Exp(share * votes.Zip(doubts, (vote, doubt) => vote.Weight * Math.Log(probability(vote.Says, doubt))).Sum());
        var candidates = votes.SelectMany(vote => vote.Says.Keys).Distinct(StringComparer.Ordinal).ToList();
        var scores = candidates.ToDictionary(candidate => candidate, candidate => Pool((vote, doubt) => Math.Max(doubt, vote.GetValueOrDefault(candidate))), StringComparer.Ordinal);
        var rest = options.OtherLetters * Pool((_, doubt) => doubt);
        var sum = scores.Values.Sum() + rest;
        var ranked = scores.Select(score => new LetterCandidate(score.Key, Probability.From(score.Value / sum))).OrderByDescending(candidate => candidate.Probability).ToList();
        var best = ranked[0];
        return best.Character.Length == 0 ? null
            : best.Probability.Value < options.UnreadableBelow ? Letter(place, Readings.Letter.Unreadable, best.Probability, ranked)
            : Letter(place, best.Character, best.Probability, ranked.Skip(1));
    }

    private Letter Letter(FusedPlace place, string character, Probability probability, IEnumerable<LetterCandidate> others) => place.Letter with
    {
        Character = character,
        Probability = probability,
        Alternatives = [.. others.Where(candidate => candidate.Probability.Value >= options.AlternativesFrom)],
    };

    /// <summary>Gives what a reading says at one of its letters: the letter and its alternatives; for an unreadable one the alternatives alone.</summary>
    internal static Dictionary<string, double> Vote(Letter letter)
    {
        var vote = letter.Alternatives.GroupBy(candidate => candidate.Character, StringComparer.Ordinal).ToDictionary(group => group.Key, group => group.Max(candidate => candidate.Probability.Value), StringComparer.Ordinal);
        if (letter.Character != Readings.Letter.Unreadable)
        {
            vote[letter.Character] = letter.Probability.Value;
        }

        return vote;
    }

    /// <summary>What a reading says of a place that it passes over: nothing, unless an alternative of its letter before goes on with another letter.</summary>
    private Dictionary<string, double> Nothing(Letter? before)
    {
        var vote = new Dictionary<string, double>(StringComparer.Ordinal);
        if (before is not null)
        {
            foreach (var longer in before.Alternatives.Where(candidate => GoesOn(before, candidate)))
            {
                vote[longer.Character[before.Character.Length..]] = longer.Probability.Value;
            }
        }

        vote[string.Empty] = options.PassedOver * (1 - Math.Min(1, vote.Values.Sum()));
        return vote;
    }

    /// <summary>What a reading says of a letter where its alternatives that go on with another letter speak at the next place.</summary>
    private static Dictionary<string, double> Shortened(Letter letter)
    {
        var vote = Vote(letter);
        foreach (var longer in letter.Alternatives.Where(candidate => GoesOn(letter, candidate)))
        {
            vote.Remove(longer.Character);
            vote[letter.Character] = Math.Min(1, vote.GetValueOrDefault(letter.Character) + longer.Probability.Value);
        }

        return vote;
    }

    private static bool GoesOn(Letter letter, LetterCandidate candidate) =>
        letter.Character != Readings.Letter.Unreadable && candidate.Character.Length > letter.Character.Length && candidate.Character.StartsWith(letter.Character, StringComparison.Ordinal);

    /// <summary>The gap behind a letter of the leading reading, as wide as the two neighbours leave it.</summary>
    private static Quad Between(ImmutableArray<Letter> letters, int after, Func<Letter, Quad> box)
    {
        var left = box(letters[Math.Max(0, after)]);
        var right = box(letters[Math.Min(letters.Length - 1, after + 1)]);
        return after < 0 ? new Quad(right.TopLeft, right.TopLeft, right.BottomLeft, right.BottomLeft)
            : after >= letters.Length - 1 ? new Quad(left.TopRight, left.TopRight, left.BottomRight, left.BottomRight)
            : new Quad(left.TopRight, right.TopLeft, right.BottomLeft, left.BottomRight);
    }
}
