using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.Readings;
using InscriptionLab.Strips;

namespace InscriptionLab.Gathering;

/// <summary>
/// Sorts the photos of one object: the same view under other lamps, the tube turned, another part. Photos are tied by a line that both read alike, or by
/// scratches, stains and lettering that fit each other; photos that nothing ties to another stay alone.
/// </summary>
public sealed class PhotoSorter
{
    private readonly GathererOptions _options;

    /// <summary>Makes a sorter.</summary>
    /// <param name="options">When lines are one line; null for the defaults.</param>
    public PhotoSorter(GathererOptions? options = null) => _options = options ?? new GathererOptions();

    /// <summary>Gives the ties that the photos' own readings show: a line that two of them read alike at one place of the picture.</summary>
    /// <param name="photos">The photos.</param>
    public ImmutableArray<PhotoTie> TiesOfLettering(ImmutableArray<GatheredPhoto> photos)
    {
        var lines = LinePlacer.InPhoto(photos);
        return [.. from one in lines
                   from other in lines
                   where one.Photo < other.Photo && Ink(one.Reading) >= _options.TyingLetters && Ink(other.Reading) >= _options.TyingLetters
                   where one.IsAt(other, 0, _options.SamePlace) && Math.Abs(one.Height - other.Height) <= _options.SamePlace * Math.Max(one.Height, other.Height)
                   where LetterPairing.Likeness(one.Reading.Letters, other.Reading.Letters) >= _options.Likeness
                   group one by (one.Photo, other.Photo) into pair
                   select new PhotoTie(pair.Key.Item1, pair.Key.Item2, true, $"'{pair.First().Reading.Text}' stands at the same place in both")];
    }

    /// <summary>Gives the ties that the surfaces show.</summary>
    /// <param name="matches">Fits of pairs of photos.</param>
    public ImmutableArray<PhotoTie> TiesOfSurface(ImmutableArray<TurnMatch> matches)
    {
        if (matches.IsDefault)
        {
            return [];
        }

        return [.. matches.Select(match => Math.Abs(match.Turn.Degrees) < _options.SmallestTurn.Degrees
            ? new PhotoTie(match.First, match.Second, true, "marks on the metal lie at the same place in both")
            : new PhotoTie(match.First, match.Second, false, string.Create(CultureInfo.InvariantCulture, $"marks on the metal fit after a turn of {match.Turn.Degrees:0.0} degrees")))];
    }

    /// <summary>Sorts photos by their ties.</summary>
    /// <param name="photos">Number of photos.</param>
    /// <param name="ties">The ties.</param>
    /// <returns>The sets of two photos and more, by their first photo.</returns>
    public static ImmutableArray<SortedPhotos> Sort(int photos, ImmutableArray<PhotoTie> ties)
    {
        var set = Enumerable.Range(0, photos).ToArray();
        foreach (var tie in ties)
        {
            var (from, to) = (set[tie.Second], set[tie.First]);
            set = [.. set.Select(one => one == from ? to : one)];
        }

        return [.. Enumerable.Range(0, photos).GroupBy(photo => set[photo]).Where(group => group.Count() > 1).Select(group =>
        {
            var held = ties.Where(tie => set[tie.First] == group.Key).ToImmutableArray();
            return new SortedPhotos(IsOneView([.. group], held) ? SetKind.Raking : SetKind.Turns, [.. group], held);
        })];
    }

    private static int Ink(LineReading line) => line.Letters.Count(letter => !letter.IsSpace);

    /// <summary>Whether ties of one and the same view alone hold all photos together.</summary>
    private static bool IsOneView(List<int> photos, ImmutableArray<PhotoTie> ties)
    {
        var reached = new HashSet<int> { photos[0] };
        while (ties.FirstOrDefault(tie => tie.SameView && reached.Contains(tie.First) != reached.Contains(tie.Second)) is { } next)
        {
            reached.Add(next.First);
            reached.Add(next.Second);
        }

        return reached.Count == photos.Count;
    }
}
