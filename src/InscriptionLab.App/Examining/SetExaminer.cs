using System;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Evidence;
using InscriptionLab.Gathering;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Readings;
using InscriptionLab.Reliefs;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;

namespace InscriptionLab.App.Examining;

/// <summary>Sorts the photos of one call, reads those that belong together and weighs each joint reading. The photos' own examinations stay as they are.</summary>
internal sealed class SetExaminer(ExaminingStages stages, SetStages together, Gatherer gatherer, PhotoSorter sorter, Stand stand)
{
    /// <summary>Examines photos together.</summary>
    /// <param name="members">The photos' own examinations, in the order given.</param>
    /// <param name="asked">Why the user says that they all belong together; null to sort them.</param>
    /// <param name="cancel">Stops between photos.</param>
    /// <returns>One joint examination a set; none where fewer than two different photos are left or nothing shows that any belong together.</returns>
    internal ImmutableArray<SetExamination> Examine(ImmutableArray<Examination> members, SetKind? asked, CancellationToken cancel)
    {
        // One photo given twice is no second witness.
        var different = members.DistinctBy(member => member.Photo.Sha256, StringComparer.Ordinal).ToImmutableArray();
        if (different.Length < 2)
        {
            return [];
        }

        var sets = asked is { } kind
            ? [new SortedPhotos(kind, [.. Enumerable.Range(0, different.Length)], [])]
            : new SetSorter(together, sorter, stand).Sort(different, cancel);
        return [.. sets.Select(set => Examine(set, [.. set.Photos.Select(photo => different[photo])], [.. set.Ties.Select(tie => SetSentences.Of(tie, different))], cancel))];
    }

    private SetExamination Examine(SortedPhotos set, ImmutableArray<Examination> members, ImmutableArray<string> reasons, CancellationToken cancel)
    {
        var photos = members.Select(member => new GatheredPhoto(member.Tube, member.Reading)).ToImmutableArray();
        var raking = set.Kind == SetKind.Raking;

        // Where a tube lies in one photo says where it lies in another only if both have one size.
        var ofOneSize = Enumerable.Range(1, members.Length - 1).All(other => SetSorter.AreOfOneSize(members, 0, other));
        var shared = !ofOneSize ? null : raking ? stand.ElectedTubeOf(photos) : stand.TubeOf(photos);
        photos = [.. members.Zip(photos, (member, photo) => Settled(member, photo, shared, wholeLength: raking, cancel))];
        var (reading, mosaic) = (gatherer.Gather(photos, set.Kind), (TurnMosaic?)null);
        if (set.Kind == SetKind.Turns && photos.All(photo => photo.Tube is not null))
        {
            var joined = Joined(members, [.. photos.Select(photo => shared ?? photo.Tube!)], cancel);
            if (joined is Outcome<TurnMosaic>.Found found)
            {
                mosaic = found.Value;
                reading = Read(members, photos, mosaic, shared, cancel);
                reasons = [.. SetSentences.Of(mosaic, members)];
            }
            else if (joined is Outcome<TurnMosaic>.Declined declined)
            {
                reasons = [.. reasons, $"{declined.Refusal.Sentence} {declined.Refusal.Remedy}"];
            }
        }

        var (relief, told) = set.Kind == SetKind.Raking ? Shape(members, photos, reading, shared, cancel) : (null, null);
        reasons = [.. reasons, .. told is null ? [] : new[] { told }];
        if (relief is not null)
        {
            reading = gatherer.Gather([.. photos, new GatheredPhoto(shared ?? photos[0].Tube, OnGrooves(members[0], relief, cancel))], set.Kind) with { Reader = reading.Reader + " and the form of the surface" };
            reasons = [.. reasons, .. SetSentences.OfDepths(reading, relief) is { } unlike ? new[] { unlike } : []];
        }

        reasons = [.. reasons, .. raking && ToneWords.Of(members) is { } tones ? new[] { tones } : []];
        var examined = new SetExamination(set.Kind, members, reading, stages.Judge(stages.Compare(reading))) { Tube = shared ?? members[0].Tube, Reasons = reasons, Mosaic = mosaic, Relief = relief };
        return Weighed(examined, stages, Circumstances.None);
    }

    /// <summary>Weighs a joint reading with what else is known of the piece.</summary>
    internal static SetExamination Weighed(SetExamination set, ExaminingStages stages, Circumstances known)
    {
        var seen = Examiner.Seen(set.Tube, set.Reading, set.Finding) with { HousesInOtherPhotos = PhotosOfOneObject.Houses(set.Members), Construction = known.Construction, Prior = known.Prior };
        return set with { Evidence = stages.Weigh(set.Reading, set.Finding, seen) };
    }

    /// <summary>Works out the form of the surface; where that cannot be told, a sentence says why.</summary>
    private (SurfaceRelief? Relief, string? Told) Shape(ImmutableArray<Examination> members, ImmutableArray<GatheredPhoto> photos, Reading reading, Tube? shared, CancellationToken cancel)
    {
        if ((shared ?? photos.Select(photo => photo.Tube).OfType<Tube>().MaxBy(tube => tube.Confidence)) is not { } tube)
        {
            return (null, null);
        }

        var shape = together.Shape([.. members.Select(member => member.Photo)], tube, LetteredPart.MiddleOf(reading), cancel);
        return shape is Outcome<SurfaceRelief>.Found found ? (found.Value, SetSentences.Of(found.Value))
            : (null, ((Outcome<SurfaceRelief>.Declined)shape).Refusal is var refusal ? $"{refusal.Sentence} {refusal.Remedy}" : null);
    }

    /// <summary>Reads the heights of the surface, grooves dark, as one more photo of the view.</summary>
    private Reading OnGrooves(Examination member, SurfaceRelief relief, CancellationToken cancel)
    {
        var grooves = together.Draw(relief);
        var strip = new Strip(grooves, new FlatStripMap(1), 2 * relief.Map.PixelsPerRadius, Unrolled: true);
        var reading = stages.Read(member.Photo with { Gray = grooves }, strip, cancel);
        return reading with { Lines = [.. reading.Lines.Select(line => StripLines.InPhoto(line, relief.Map))] };
    }

    private Outcome<TurnMosaic> Joined(ImmutableArray<Examination> members, ImmutableArray<Tube> tubes, CancellationToken cancel)
    {
        var photos = members.Select(member => member.Photo).ToImmutableArray();
        return together.Join(photos, tubes, together.Match(photos, tubes, cancel), cancel);
    }

    /// <summary>Reads the joined strip, and each of its lines together with what the single photos read at the same place.</summary>
    private Reading Read(ImmutableArray<Examination> members, ImmutableArray<GatheredPhoto> photos, TurnMosaic mosaic, Tube? shared, CancellationToken cancel)
    {
        var strip = new Strip(mosaic.Image, new FlatStripMap(1), 2 * mosaic.PixelsPerRadius, Unrolled: true);
        var onStrip = stages.Read(members[0].Photo with { Gray = mosaic.Image }, strip, cancel);
        ImmutableArray<Tube> tubes = [.. photos.Select(photo => shared ?? photo.Tube!)];
        var turns = photos.Select((_, photo) => mosaic.Views.FirstOrDefault(view => view.PhotoIndex == photo)?.Turn).ToList();
        return gatherer.Gather([.. photos, .. TurnedSurface.Views(onStrip, mosaic, tubes)], SetKind.Turns, [.. turns, .. mosaic.Views.Select(view => (Angle?)view.Turn)]);
    }

    /// <summary>Reads a photo again whose outlines were found elsewhere, or over a shorter length, than most photos of the stand have them.</summary>
    private GatheredPhoto Settled(Examination member, GatheredPhoto photo, Tube? shared, bool wholeLength, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        return shared is null || (photo.Tube is { } own && member.Strip.Unrolled && stand.AreSame(shared, own) && !(wholeLength && stand.IsShort(own, shared)))
            ? photo
            : new GatheredPhoto(shared, stages.Read(member.Photo, stages.Unroll(member.Photo, shared, cancel), cancel));
    }
}
