using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Measures;

namespace InscriptionLab.Gathering;

/// <summary>Finds by how much the tube was turned between photos, from lines that two photos show.</summary>
internal sealed class TurnFinder(GathererOptions options)
{
    /// <summary>Gives for each photo the angle, in radians, to add to its lines so that they lie where the first photo with most lines has them; photos that share no line with any other are missing.</summary>
    internal Dictionary<int, double> Find(IReadOnlyList<PlacedLine> lines)
    {
        var photos = lines.GroupBy(line => line.Photo).ToDictionary(group => group.Key, group => group.ToList());
        var turns = new Dictionary<int, double>();
        if (photos.Count == 0)
        {
            return turns;
        }

        turns[photos.OrderByDescending(photo => photo.Value.Sum(line => LetterFusion.Weight(line.Reading))).ThenBy(photo => photo.Key).First().Key] = 0;
        while (Next(photos, turns) is { } found)
        {
            turns[found.Photo] = found.Turn;
        }

        return turns;
    }

    /// <summary>The photo that shares the most letters with those already placed.</summary>
    private (int Photo, double Turn)? Next(Dictionary<int, List<PlacedLine>> photos, Dictionary<int, double> turns)
    {
        var best = (from known in turns
                    from other in photos
                    where !turns.ContainsKey(other.Key)
                    let shared = Shared(photos[known.Key], other.Value)
                    where shared.Count > 0
                    orderby shared.Sum(pair => LetterFusion.Weight(pair.Other.Reading)) descending, other.Key
                    select (Photo: other.Key, Turn: known.Value + Median.Of(shared.Select(pair => pair.One.Shortest(pair.One.Around - pair.Other.Around))))).ToList();
        return best.Count > 0 ? best[0] : null;
    }

    /// <summary>Lines that read alike and stand at the same place along the tube.</summary>
    internal List<(PlacedLine One, PlacedLine Other)> Shared(IEnumerable<PlacedLine> some, IEnumerable<PlacedLine> others) =>
        [.. from one in some
            from other in others
            where Math.Abs(one.Along - other.Along) <= Math.Max(one.Length, other.Length) / 2 && LetterPairing.Likeness(one.Reading.Letters, other.Reading.Letters) >= options.Likeness
            select (one, other)];
}
