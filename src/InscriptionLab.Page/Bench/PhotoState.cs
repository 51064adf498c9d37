using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Advice;
using InscriptionLab.App.Examining;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using InscriptionLab.Photos;
using InscriptionLab.Readings;
using InscriptionLab.Sizes;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;

namespace InscriptionLab.Page.Bench;

/// <summary>Everything known of one photo at one moment; a new one is made at every step and none is ever changed.</summary>
/// <param name="Stages">How far each stage is.</param>
internal sealed record PhotoState(ImmutableArray<StageProgress> Stages)
{
    /// <summary>Gets the stages in their order.</summary>
    internal static ImmutableArray<string> StageNames { get; } = ["photo", "tube", "strip", "reading", "finding"];

    /// <summary>Gets the state before anything ran.</summary>
    internal static PhotoState Untouched { get; } = new([.. StageNames.Select(name => new StageProgress(name, StageStatus.Waiting, null))]);

    internal Photo? Photo { get; init; }

    internal TilePyramid? Tiles { get; init; }

    internal Tube? Tube { get; init; }

    /// <summary>Gets the person who moved the tube's outlines; null where the program found them.</summary>
    internal HandMark? TubeBy { get; init; }

    /// <summary>Gets the ring whose face was laid flat; null where no lettering runs round one.</summary>
    internal RingFace? Ring { get; init; }

    /// <summary>Gets the person who drew the rim of the ring; null where the program found it.</summary>
    internal HandMark? RingBy { get; init; }

    internal Strip? Strip { get; init; }

    /// <summary>Gets a name that changes whenever the strip does.</summary>
    internal string StripKey { get; init; } = string.Empty;

    /// <summary>Gets the strip that stood here before: a window that was told of it may still ask for its picture.</summary>
    internal (string Key, Strip Strip)? StripBefore { get; init; }

    /// <summary>Gives the strip of a key, where it is this one or the one before.</summary>
    internal Strip? StripOf(string key) => key == StripKey ? Strip : StripBefore is { } before && before.Key == key ? before.Strip : null;

    /// <summary>Gives the state with another strip.</summary>
    internal PhotoState WithStrip(Strip strip, string key) =>
        this with { StripBefore = Strip is not null && StripKey != key ? (StripKey, Strip) : StripBefore, Strip = strip, StripKey = key };

    internal Reading? Reading { get; init; }

    internal ImmutableArray<WorkedLine> Lines { get; init; } = [];

    internal Finding? Finding { get; init; }

    internal EvidenceReport Evidence { get; init; } = EvidenceReport.Empty;

    internal PhotoAdvice? Advice { get; init; }

    /// <summary>Gets sizes of tube and lettering in millimetres; null where no scale lies beside the tube.</summary>
    internal TubeSizes? Sizes { get; init; }

    /// <summary>Gets a name that changes whenever reading or finding do; empty before the finding is there.</summary>
    internal string FindingKey { get; init; } = string.Empty;

    /// <summary>Gets a name that changes whenever the reading does, whatever list it is compared with.</summary>
    internal string ReadingKey { get; init; } = string.Empty;

    internal ImmutableArray<string> Warnings { get; init; } = [];

    /// <summary>Gets the corrections that were made on something that is no longer there.</summary>
    internal ImmutableHashSet<int> SetAside { get; init; } = [];

    /// <summary>Gets the sentence where the photo cannot be used at all; null otherwise.</summary>
    internal string? Problem { get; init; }

    /// <summary>Gets a value indicating whether the surface laid flat is there to be seen, or never will be.</summary>
    internal bool CanBeSeen => Strip is not null || Problem is not null;

    /// <summary>Gets all of it as one examination; null before the last stage is done.</summary>
    internal Examination? ToExamination() => this is { Problem: null, Photo: { } photo, Strip: { } strip, Reading: { } reading, Finding: { } finding, Advice: { } advice }
        ? new Examination(photo, Tube, strip, reading, finding, advice, Warnings, []) { Ring = Ring, Sizes = Sizes, Evidence = Evidence }
        : null;

    internal PhotoState With(string stage, StageProgress progress) => this with { Stages = Stages.SetItem(StageNames.IndexOf(stage), progress) };
}
