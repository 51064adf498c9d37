using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Gathering;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;

namespace InscriptionLab.App.Examining;

/// <summary>Sorts the photos of one call into sets: by lettering first, and where that does not tell, by what the surface of a tube shows that stayed on its rest.</summary>
internal sealed class SetSorter(SetStages stages, PhotoSorter sorter, Stand stand)
{
    /// <summary>Photos from which on shadows and reflections can be told from what turns with the tube.</summary>
    private const int FewestPhotos = 3;

    /// <summary>Sorts photos.</summary>
    /// <param name="members">The photos' own examinations.</param>
    /// <param name="cancel">Stops between stands.</param>
    internal ImmutableArray<SortedPhotos> Sort(ImmutableArray<Examination> members, CancellationToken cancel)
    {
        var ties = sorter.TiesOfLettering([.. members.Select(member => new GatheredPhoto(member.Tube, member.Reading))]);
        var free = Enumerable.Range(0, members.Length).Where(photo => !ties.Any(tie => tie.First == photo || tie.Second == photo)).ToList();
        while (LargestStand(members, free) is { } tube)
        {
            cancel.ThrowIfCancellationRequested();

            // Outlines found elsewhere in some photos of a stand do not matter: all are laid flat by those that most agree on.
            var photos = free.Where(photo => AreOfOneSize(members, photo, tube.Photo)).ToImmutableArray();
            free.RemoveAll(photos.Contains);
            if (photos.Length >= FewestPhotos)
            {
                var matches = stages.Match([.. photos.Select(photo => members[photo].Photo)], [.. photos.Select(_ => tube.Tube)], cancel);
                ties = ties.AddRange(sorter.TiesOfSurface(Renumbered(matches, photos)));
            }
        }

        return PhotoSorter.Sort(members.Length, ties);
    }

    /// <summary>The tube on whose outlines most photos agree, two at least, and the first of those photos.</summary>
    private (Tube Tube, int Photo)? LargestStand(ImmutableArray<Examination> members, List<int> free)
    {
        var votes = free.Where(photo => members[photo].Tube is not null).Select(photo => (Photo: photo, Votes: free.Count(other =>
            members[other].Tube is { } tube && AreOfOneSize(members, photo, other) && stand.AreSame(members[photo].Tube!, tube)))).ToList();
        var most = votes.OrderByDescending(vote => vote.Votes).FirstOrDefault();
        return most.Votes >= 2 ? (members[most.Photo].Tube!, most.Photo) : null;
    }

    /// <summary>Whether two photos have the same width and height.</summary>
    internal static bool AreOfOneSize(ImmutableArray<Examination> members, int one, int other) =>
        (members[one].Photo.Gray.Width, members[one].Photo.Gray.Height) == (members[other].Photo.Gray.Width, members[other].Photo.Gray.Height);

    private static ImmutableArray<TurnMatch> Renumbered(ImmutableArray<TurnMatch> matches, ImmutableArray<int> photos) =>
        [.. matches.Select(match => match with { First = photos[match.First], Second = photos[match.Second] })];
}
