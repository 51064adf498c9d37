using System;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Gathering;
using InscriptionLab.Tubes;

namespace InscriptionLab.App.Examining;

/// <summary>Reads the photos of one call together and weighs the joint reading. The photos' own examinations stay as they are.</summary>
internal sealed class SetExaminer(ExaminingStages stages, Gatherer gatherer, Stand stand)
{
    /// <summary>Examines photos together.</summary>
    /// <param name="members">The photos' own examinations, in the order given.</param>
    /// <param name="asked">Why the user says that they belong together; null to find out.</param>
    /// <param name="cancel">Stops between photos.</param>
    /// <returns>The joint examination, or null where fewer than two different photos are left or nothing shows that they belong together.</returns>
    internal SetExamination? Examine(ImmutableArray<Examination> members, SetKind? asked, CancellationToken cancel)
    {
        // One photo given twice is no second witness.
        var different = members.DistinctBy(member => member.Photo.Sha256, StringComparer.Ordinal).ToImmutableArray();
        var photos = different.Select(member => new GatheredPhoto(member.Tube, member.Reading)).ToImmutableArray();
        if (photos.Length < 2 || (asked ?? gatherer.KindOf(photos)) is not { } kind)
        {
            return null;
        }

        var shared = stand.TubeOf(photos);
        var reading = gatherer.Gather([.. different.Zip(photos, (member, photo) => Settled(member, photo, shared, cancel))], kind);
        var finding = stages.Judge(stages.Compare(reading));
        var known = Examiner.Seen(shared ?? different[0].Tube, reading, finding) with { HousesInOtherPhotos = PhotosOfOneObject.Houses(different) };
        return new SetExamination(kind, different, reading, finding) { Evidence = stages.Weigh(reading, finding, known) };
    }

    /// <summary>Reads a photo again whose outlines were found elsewhere than most photos of the stand have them.</summary>
    private GatheredPhoto Settled(Examination member, GatheredPhoto photo, Tube? shared, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        return shared is null || (photo.Tube is { } own && member.Strip.Unrolled && stand.AreSame(shared, own))
            ? photo
            : new GatheredPhoto(shared, stages.Read(member.Photo, stages.Unroll(member.Photo, shared, cancel), cancel));
    }
}
