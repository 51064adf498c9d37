using System;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Threading;
using InscriptionLab.Advice;
using InscriptionLab.App.Examining;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Readings;
using InscriptionLab.Sizes;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;

namespace InscriptionLab.Page.Bench;

/// <summary>
/// The stages of one photo, each with its results kept: a correction runs again only what depends on it, and an undone one runs nothing.
/// Used by one thread at a time.
/// </summary>
/// <param name="file">The photo's file on this machine.</param>
/// <param name="name">Its name as the user knows it.</param>
/// <param name="clock">Times the stages.</param>
internal sealed class PhotoChain(string file, string name, TimeProvider clock)
{
    /// <summary>How many results of a stage are kept: so many steps can be undone at no cost.</summary>
    private const int Kept = 6;

    /// <summary>Key of the surface that is the face of a ring.</summary>
    private const string OnRing = "ring";

    private static readonly Outcome<ImmutableArray<Tube>> NoTube = new Outcome<ImmutableArray<Tube>>.Found([]);

    private readonly Memo<string, Photo> _photos = new(1);
    private readonly Memo<string, Outcome<ImmutableArray<Tube>>> _tubes = new(Kept);
    private readonly Memo<string, Strip> _strips = new(Kept);
    private readonly Memo<string, Reading> _readings = new(Kept);
    private readonly Memo<string, ReadSurface> _rings = new(Kept);
    private readonly Memo<string, LineReading?> _handReadings = new(Kept * Kept);
    private readonly Memo<string, Finding> _findings = new(Kept);
    private readonly Memo<string, EvidenceReport> _evidence = new(Kept);
    private readonly Memo<string, TubeSizes?> _sizes = new(Kept);
    private readonly Memo<string, PhotoAdvice> _advice = new(Kept);
    private TilePyramid? _tiles;

    /// <summary>Runs what is not known yet.</summary>
    /// <param name="before">State after the earlier run.</param>
    /// <param name="corrections">Corrections of this photo, in the order in which they were made.</param>
    /// <param name="known">What persons said of the piece.</param>
    /// <param name="stages">The stages.</param>
    /// <param name="tell">Told the state before and after every stage.</param>
    /// <param name="cancel">Stops between two stages.</param>
    internal PhotoState Run(PhotoState before, ImmutableArray<Correction> corrections, PieceKnowledge known, BenchStages stages, Action<PhotoState> tell, CancellationToken cancel)
    {
        var run = new StageRun(before, clock, tell, cancel);
        try
        {
            Examine(run, corrections, known, stages, cancel);
        }
        catch (InscriptionLabException problem)
        {
            run.Fail(problem.Message.Replace(file, name, StringComparison.Ordinal));
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            run.Fail($"{name}: {problem.Message}");
        }

        return run.State;
    }

    private void Examine(StageRun run, ImmutableArray<Correction> corrections, PieceKnowledge known, BenchStages stages, CancellationToken cancel)
    {
        var examining = stages.Examining;
        var photo = run.Do("photo", () => _photos.Get(file, () => examining.Open(file) with { File = name }), StageStatus.Done);
        _tiles ??= new TilePyramid(photo.Colour);
        run.Note(state => state with { Photo = photo, Tiles = _tiles });

        // Of tube and ring the one counts that was drawn last.
        var last = corrections.LastOrDefault(correction => correction is Correction.TubeEdges or Correction.RingRim);
        var (drawn, rim) = (last as Correction.TubeEdges, last as Correction.RingRim);
        var tubes = run.Do("tube", () => _tubes.Get(rim is null ? KeyOf(drawn) : OnRing, () => rim is null ? Tubes(photo, drawn, examining.FindTubes, cancel) : NoTube), outcome => StatusOf(outcome, last));
        var surface = Read(run, photo, tubes, drawn, examining, cancel);
        surface = drawn is null ? ReadRing(run, photo, surface, rim, rim is null ? examining : Marked(stages, rim), cancel) : surface;

        var hand = new HandLines(box => _handReadings.Get(Invariant($"{surface.Key}/{box.Id}"), () => stages.ReadAt(photo, surface.Strip, box.Box, cancel)).Result);
        var lines = hand.Apply(surface.Reading.Lines, surface.Key, corrections);
        var reading = surface.Reading with { Lines = [.. lines.Select(line => line.Reading)] };
        run.Note(state => state with { Reading = reading, Lines = lines, SetAside = hand.SetAside });
        if (lines.Any(line => line.HasHandLetters || line.Box is not null))
        {
            run.ByHand("reading");
        }

        var readingKey = $"{surface.Key}/{string.Join(',', corrections.Where(correction => !hand.SetAside.Contains(correction.Id)).Select(correction => correction.Id))}";
        var findingKey = $"{stages.ListKey}/{readingKey}";
        var finding = run.Do("finding", () => _findings.Get(findingKey, () => examining.Judge(examining.Compare(reading))), StageStatus.Done);
        var lettered = run.State.Ring is null && tubes is Outcome<ImmutableArray<Tube>>.Found { Value.IsEmpty: false } found ? LetteredPart.TubeOf(reading, found.Value) : null;
        var seen = known.With(Examiner.Seen(lettered, reading, finding));
        var evidence = _evidence.Get($"{findingKey}/{known.Key}", () => examining.Weigh(reading, finding, seen)).Result;
        var advice = _advice.Get(findingKey, () => examining.Advise(photo, run.State.Tube, reading, cancel)).Result;
        run.Note(state => state with { Finding = finding, FindingKey = findingKey, ReadingKey = readingKey, Evidence = evidence, Advice = advice, Warnings = [.. surface.Warnings, .. HandLines.Sentences(lines)] });
        var sizes = run.State.Tube is { } tube ? _sizes.Get(findingKey, () => examining.Size(photo, tube, reading, cancel)).Result : null;
        run.Note(state => state with { Sizes = sizes });
    }

    /// <summary>The stages for a photo on which a person drew the rim of a ring.</summary>
    private static ExaminingStages Marked(BenchStages stages, Correction.RingRim rim) =>
        stages.Examining with { FindRing = (photo, _) => stages.MarkRing(photo, rim.Rim, rim.Opening), RingIsMarked = true };

    /// <summary>Shows the likeliest tube laid flat at once; reads the photo as it is, picks the tube that carries the lettering, reads that one laid flat, and joins both readings.</summary>
    private Surface Read(StageRun run, Photo photo, Outcome<ImmutableArray<Tube>> found, Correction.TubeEdges? drawn, ExaminingStages examining, CancellationToken cancel)
    {
        if (found is not Outcome<ImmutableArray<Tube>>.Found { Value: { IsEmpty: false } tubes })
        {
            ImmutableArray<string> why = found is Outcome<ImmutableArray<Tube>>.Declined { Refusal: var refusal } ? [$"{refusal.Sentence} {refusal.Remedy}"] : [];
            var alone = Lay(run, photo, null, "flat", drawn, examining, cancel);
            var all = run.Do("reading", () => _readings.Get("flat", () => examining.Read(photo, alone, cancel)), StageStatus.Done);
            return new Surface("flat", alone, all, why);
        }

        string KeyOfTube(Tube tube) => Invariant($"{KeyOf(drawn)}{tubes.IndexOf(tube)}");
        var strip = Lay(run, photo, tubes[0], KeyOfTube(tubes[0]), drawn, examining, cancel);
        var flat = _strips.Get("flat", () => examining.LayFlat(photo, cancel)).Result;
        var asItIs = run.Do("reading", () => _readings.Get("flat", () => examining.Read(photo, flat, cancel)), StageStatus.Running);
        if (LetteredPart.TubeOf(asItIs, tubes) is not { } tube)
        {
            run.End("reading");
            return new Surface(KeyOfTube(tubes[0]), strip, asItIs, [Examiner.TubeWithoutLettering, .. tubes[0].Notes]);
        }

        strip = Lay(run, photo, tube, KeyOfTube(tube), drawn, examining, cancel);
        var unrolled = run.Do("reading", () => _readings.Get(KeyOfTube(tube), () => examining.Read(photo, strip, cancel)), StageStatus.Done);
        var joint = ReadingUnion.Of(unrolled, asItIs);
        ImmutableArray<string> said = [.. ReferenceEquals(joint, unrolled) ? ImmutableArray<string>.Empty : [Examiner.ReadFromPhoto], .. LetteredPart.OthersCarry(tube, tubes, asItIs) ? ImmutableArray.Create(Examiner.OtherTubeLettered) : [], .. tube.Notes];
        return new Surface(KeyOfTube(tube), strip, joint, said);
    }

    /// <summary>Looks for a ring where the lettering does not stand surely along or round a tube.</summary>
    private Surface ReadRing(StageRun run, Photo photo, Surface surface, Correction.RingRim? rim, ExaminingStages examining, CancellationToken cancel)
    {
        var other = new ReadSurface(run.State.Tube, surface.Strip, surface.Reading) { Warnings = surface.Warnings };
        var ring = new RingReading(examining);
        if (!ring.IsWanted(other))
        {
            return surface;
        }

        var key = rim is null ? OnRing : Invariant($"{OnRing}-drawn{rim.Id}");
        var joint = _rings.Get($"{surface.Key}/{key}", () => ring.Read(photo, other, cancel)).Result;
        if (joint is not { Ring: not null, Strip.Map: RingStripMap map })
        {
            return surface with { Warnings = joint.Warnings };
        }

        run.Note(state => state.WithStrip(joint.Strip, key) with { Tube = null, TubeBy = null, Ring = joint.Ring, RingBy = rim is null ? null : new HandMark(rim.Person, rim.At, string.Empty) });
        return new Surface(key, joint.Strip, joint.Reading, [RingSense.Sentence(joint.Reading, map), .. joint.Warnings]);
    }

    private Strip Lay(StageRun run, Photo photo, Tube? tube, string key, Correction.TubeEdges? drawn, ExaminingStages examining, CancellationToken cancel)
    {
        run.Note(state => state with { Ring = null, RingBy = null, Tube = tube, TubeBy = drawn is null || tube is null ? null : new HandMark(drawn.Person, drawn.At, string.Empty) });
        var strip = run.Do("strip", () => _strips.Get(key, () => tube is null ? examining.LayFlat(photo, cancel) : examining.Unroll(photo, tube, cancel)), StageStatus.Done);
        run.Note(state => state.WithStrip(strip, key));
        return strip;
    }

    private Outcome<ImmutableArray<Tube>> Tubes(Photo photo, Correction.TubeEdges? drawn, Func<Photo, CancellationToken, Outcome<ImmutableArray<Tube>>> find, CancellationToken cancel)
    {
        var found = drawn is null ? find(photo, cancel) : _tubes.Get(KeyOf(null), () => find(photo, cancel)).Result;
        return drawn is null
            ? found
            : HandTube.Of(photo, (found as Outcome<ImmutableArray<Tube>>.Found)?.Value[0], drawn).Then(tube => new Outcome<ImmutableArray<Tube>>.Found([tube]));
    }

    private static string KeyOf(Correction.TubeEdges? drawn) => drawn is null ? "found" : Invariant($"drawn{drawn.Id}-");

    private static StageStatus StatusOf(Outcome<ImmutableArray<Tube>> outcome, Correction? drawn) => outcome is Outcome<ImmutableArray<Tube>>.Declined
        ? StageStatus.Declined
        : drawn is null ? StageStatus.Done : StageStatus.ByHand;

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);

    /// <summary>A surface and what was read on it.</summary>
    private sealed record Surface(string Key, Strip Strip, Reading Reading, ImmutableArray<string> Warnings);
}
