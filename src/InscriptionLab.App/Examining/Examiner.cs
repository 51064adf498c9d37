using System;
using System.Collections.Immutable;
using System.Threading;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Readings;
using InscriptionLab.Sizes;
using InscriptionLab.Tubes;

namespace InscriptionLab.App.Examining;

/// <summary>The flow: photo, tube or ring, strip, reading, comparison, finding. Each stage is timed; what a stage cannot tell becomes a warning and the flow goes on with what is left.</summary>
/// <param name="stages">The stages.</param>
/// <param name="clock">The clock.</param>
/// <param name="sideBySide">Whether stages that need nothing of one another run at the same time: quicker for one photo, no gain where as many photos as cores are examined at once.</param>
internal sealed class Examiner(ExaminingStages stages, TimeProvider clock, bool sideBySide = true)
{
    /// <summary>Said where lettering was read from the photo as it is although a tube was found.</summary>
    internal const string ReadFromPhoto =
        "Some lettering was read from the photo as it is and not from the tube laid flat: letters away from the middle of the tube are narrower there than on the metal.";

    /// <summary>Said where the lettering lies outside every tube that was found.</summary>
    internal const string TubeWithoutLettering =
        "The two outlines of the tube that carries the lettering were not made out, so the lettering was read from the photo as it is. Take in both long sides of the tube, or mark them by hand (--edges).";

    /// <summary>Said where more than one tube carries lettering.</summary>
    internal const string OtherTubeLettered =
        "More than one tube in this photo carries lettering: the one with the most lines was laid flat, the rest was read from the photo as it is. Photograph each draw by itself to have it laid flat too.";

    /// <summary>Examines one photo.</summary>
    /// <param name="file">File as the user named it.</param>
    /// <param name="cancel">Stops the flow between two stages.</param>
    /// <exception cref="InscriptionLabException">The file cannot be used.</exception>
    internal Examination Examine(string file, CancellationToken cancel)
    {
        var watch = new StageWatch(clock, cancel, sideBySide);
        var photo = watch.Run("photo", () => stages.Open(file));
        var (tubes, asItIs) = watch.Both(own => own.Run("tube", () => stages.FindTubes(photo, cancel)), own => ReadAsItIs(photo, own, cancel));
        var surface = Read(photo, tubes, asItIs, watch, cancel);
        var (advice, (finding, sizes, evidence)) = watch.Both(
            own => own.Run("advice", () => stages.Advise(photo, surface.Tube, surface.Reading, cancel)),
            own => Weigh(photo, surface, own, cancel));
        return new Examination(photo, surface.Tube, surface.Strip, surface.Reading, finding, advice, [.. ViewWords.Of(surface.Reading), .. surface.Warnings, .. StyleWords.Of(surface.Reading) is { } styles ? ImmutableArray.Create(styles) : []], watch.Times) { Ring = surface.Ring, Sizes = sizes, Evidence = evidence };
    }

    private (Finding Finding, TubeSizes? Sizes, EvidenceReport Evidence) Weigh(Photo photo, ReadSurface surface, StageWatch watch, CancellationToken cancel)
    {
        var comparison = watch.Run("comparison", () => stages.Compare(surface.Reading));
        var finding = watch.Run("finding", () => stages.Judge(comparison));
        var sizes = surface.Tube is { } sized ? watch.Run("sizes", () => stages.Size(photo, sized, surface.Reading, cancel)) : null;
        return (finding, sizes, watch.Run("evidence", () => stages.Weigh(surface.Reading, finding, Seen(surface.Tube, surface.Reading, finding, sizes))));
    }

    /// <summary>Weighs an examination again beside the houses that all photos of the piece name.</summary>
    internal EvidenceReport Weigh(Examination examination, ImmutableArray<string> houses) => stages.Weigh(
        examination.Reading,
        examination.Finding,
        Seen(examination.Tube, examination.Reading, examination.Finding, examination.Sizes) with { HousesInOtherPhotos = houses });

    /// <summary>What the photo shows of the piece beside its letters.</summary>
    internal static Circumstances Seen(Tube? tube, Reading reading, Finding finding, TubeSizes? sizes = null) => Circumstances.None with
    {
        RunsAround = LetteredPart.RunsAround(tube, reading, finding.Leading?.LineIndex),
        LetterHeights = (sizes?.Lines ?? []).ToImmutableDictionary(line => line.Line, line => line.Tallest),
    };

    private ReadSurface ReadAsItIs(Photo photo, StageWatch watch, CancellationToken cancel)
    {
        var flat = watch.Run("strip", () => stages.LayFlat(photo, cancel));
        return new ReadSurface(null, flat, watch.Run("reading", () => stages.Read(photo, flat, cancel)));
    }

    /// <summary>Reads the tube that carries the lettering, and where that is not sure the face of a ring; joins the readings with that of the photo as it is.</summary>
    private ReadSurface Read(Photo photo, Outcome<ImmutableArray<Tube>> tubes, ReadSurface asItIs, StageWatch watch, CancellationToken cancel)
    {
        var surface = tubes switch
        {
            Outcome<ImmutableArray<Tube>>.Found { Value: [] } => asItIs,
            Outcome<ImmutableArray<Tube>>.Found found => ReadTube(photo, found.Value, asItIs, watch, cancel),
            Outcome<ImmutableArray<Tube>>.Declined declined => asItIs with { Warnings = [$"{declined.Refusal.Sentence} {declined.Refusal.Remedy}"] },
            _ => asItIs,
        };
        var ring = new RingReading(stages);
        return ring.IsWanted(surface) ? watch.Run("ring", () => ring.Read(photo, surface, cancel)) : surface;
    }

    private ReadSurface ReadTube(Photo photo, ImmutableArray<Tube> tubes, ReadSurface asItIs, StageWatch watch, CancellationToken cancel)
    {
        if ((LetteredPart.TubeOf(asItIs.Reading, tubes) ?? (stages.TubesAreMarked ? tubes[0] : null)) is not { } tube)
        {
            return asItIs with { Warnings = [TubeWithoutLettering] };
        }

        var strip = watch.Run("strip", () => stages.Unroll(photo, tube, cancel));
        var unrolled = watch.Run("reading", () => stages.Read(photo, strip, cancel));
        var joint = ReadingUnion.Of(unrolled, asItIs.Reading);
        var warnings = ImmutableArray.CreateBuilder<string>();
        if (LetteredPart.OthersCarry(tube, tubes, asItIs.Reading))
        {
            warnings.Add(OtherTubeLettered);
        }

        if (!ReferenceEquals(joint, unrolled))
        {
            warnings.Add(ReadFromPhoto);
        }

        return new ReadSurface(tube, strip, joint) { Warnings = [.. warnings, .. tube.Notes] };
    }
}
