using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Readings;

namespace InscriptionLab.Gathering;

/// <summary>Reads several photos of one object together: finds out why they belong together, which of their lines are the same line, and puts those lines' letters together.</summary>
public sealed class Gatherer
{
    private readonly GathererOptions _options;
    private readonly LetterFusion _fusion;
    private readonly LetterFusion _even;
    private readonly TurnFinder _turns;

    /// <summary>Makes a gatherer.</summary>
    /// <param name="options">When lines are one line; null for the defaults.</param>
    public Gatherer(GathererOptions? options = null)
    {
        _options = options ?? new GathererOptions();
        _fusion = new LetterFusion(_options);
        _even = new LetterFusion(_options with { Reliability = 0 });
        _turns = new TurnFinder(_options);
    }

    /// <summary>Finds out why photos belong together; null where nothing shows that they do.</summary>
    /// <param name="photos">Photos in the order given.</param>
    public SetKind? KindOf(ImmutableArray<GatheredPhoto> photos)
    {
        if (Chain(LinePlacer.InPhoto(photos), (one, other) => one.IsAt(other, 0, _options.SamePlace) && AreAlike(one, other)))
        {
            return SetKind.Raking;
        }

        var onTube = LinePlacer.OnTube(photos);
        if (onTube.Count == 0 || new Stand(_options).TubeOf(photos) is null)
        {
            return null;
        }

        var moved = _turns.Find(onTube);
        return moved.Values.Any(turn => Math.Abs(turn) > onTube.Min(line => line.Height) * _options.SamePlace) ? SetKind.Turns : null;
    }

    /// <summary>Reads photos together.</summary>
    /// <param name="photos">Photos in the order given.</param>
    /// <param name="kind">Why they belong together.</param>
    /// <returns>The joint reading: its lines in reading order, each line's boxes in the photo that reads it best.</returns>
    public Reading Gather(ImmutableArray<GatheredPhoto> photos, SetKind kind) => Gather(photos, kind, null);

    /// <summary>Reads photos together whose turns are known.</summary>
    /// <param name="photos">Photos in the order given.</param>
    /// <param name="kind">Why they belong together.</param>
    /// <param name="turned">By how much the tube was turned in each photo, null for a photo where that is not known; null to find the turns from lines that photos share.</param>
    /// <returns>The joint reading.</returns>
    public Reading Gather(ImmutableArray<GatheredPhoto> photos, SetKind kind, ImmutableArray<Measures.Angle?>? turned)
    {
        var lines = kind == SetKind.Raking ? LinePlacer.InPhoto(photos) : LinePlacer.OnTube(photos);
        var turns = kind == SetKind.Raking ? Enumerable.Range(0, photos.Length).ToDictionary(photo => photo, _ => 0.0)
            : turned is { } known ? Enumerable.Range(0, photos.Length).Where(photo => known[photo] is not null).ToDictionary(photo => photo, photo => -known[photo]!.Value.Radians)
            : _turns.Find(lines);
        var groups = Group(lines, turns);
        var ordered = Order(groups, turns).Select(group => (kind == SetKind.Raking ? _fusion : _even).Fuse([.. group.Select(line => line.Reading)]));
        var readers = photos.Select(photo => photo.Reading.Reader).Distinct(StringComparer.Ordinal);
        return new Reading($"{string.Join(", ", readers)}; {photos.Length} photos together", [.. ordered.Where(line => !line.Letters.IsEmpty)], Style(photos));
    }

    private bool AreAlike(PlacedLine one, PlacedLine other) => LetterPairing.Likeness(one.Reading.Letters, other.Reading.Letters) >= _options.Likeness;

    /// <summary>Whether all photos with lines hang together by pairs of lines.</summary>
    private static bool Chain(List<PlacedLine> lines, Func<PlacedLine, PlacedLine, bool> same)
    {
        var photos = lines.Select(line => line.Photo).Distinct().ToList();
        var reached = photos.Take(1).ToHashSet();
        while (lines.FirstOrDefault(line => !reached.Contains(line.Photo) && lines.Any(other => reached.Contains(other.Photo) && same(line, other))) is { } next)
        {
            reached.Add(next.Photo);
        }

        return photos.Count >= 2 && reached.Count == photos.Count;
    }

    /// <summary>Puts lines together that lie at one place, the surest line of each place first; one line a photo.</summary>
    private List<List<PlacedLine>> Group(List<PlacedLine> lines, Dictionary<int, double> turns)
    {
        var groups = new List<List<PlacedLine>>();
        foreach (var line in lines.OrderByDescending(line => LetterFusion.Weight(line.Reading)))
        {
            var group = groups.FirstOrDefault(members => members.All(member => member.Photo != line.Photo) && IsSame(members[0], line, turns));
            if (group is null)
            {
                groups.Add([line]);
            }
            else if (AreAlike(group[0], line))
            {
                // A line at the same place that reads otherwise was misread: it says nothing of the letters.
                group.Add(line);
            }
        }

        return groups;
    }

    private bool IsSame(PlacedLine one, PlacedLine other, Dictionary<int, double> turns) =>
        turns.TryGetValue(one.Photo, out var first) && turns.TryGetValue(other.Photo, out var second)
            ? one.IsAt(other, second - first, AreAlike(one, other) ? 2 * _options.SamePlace : _options.SamePlace)
            : AreAlike(one, other);

    /// <summary>Sorts lines from a reader's top to bottom, as the line with most letters lies; lines of photos whose turn is unknown come last.</summary>
    private static IEnumerable<List<PlacedLine>> Order(List<List<PlacedLine>> groups, Dictionary<int, double> turns)
    {
        if (groups.Count == 0)
        {
            return groups;
        }

        var reader = groups.MaxBy(group => LetterFusion.Weight(group[0].Reading))![0];
        double Down(PlacedLine line) => turns.TryGetValue(line.Photo, out var turn)
            ? ((line.Along - reader.Along) * reader.DownAlong) + (reader.Shortest(line.Around + turn - reader.Around) * reader.DownAround)
            : double.PositiveInfinity;
        return groups.OrderBy(group => Down(group[0])).ThenBy(group => group[0].Photo);
    }

    private static ImmutableArray<StyleCandidate> Style(ImmutableArray<GatheredPhoto> photos)
    {
        var read = photos.Where(photo => !photo.Reading.Style.IsEmpty).ToList();
        return [.. read.SelectMany(photo => photo.Reading.Style)
            .GroupBy(style => style.Style, StringComparer.Ordinal)
            .Select(style => new StyleCandidate(style.Key, Measures.Probability.From(style.Sum(one => one.Probability.Value) / read.Count)))
            .OrderByDescending(style => style.Probability)];
    }
}
