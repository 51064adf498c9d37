using System;
using InscriptionLab.Advice;
using InscriptionLab.Cells;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using InscriptionLab.Gathering;
using InscriptionLab.References;

namespace InscriptionLab.App.Records;

/// <summary>The words that stand for the domain's enumerations wherever the program writes.</summary>
internal static class Words
{
    internal static string For(FindingOutcome outcome) => outcome switch
    {
        FindingOutcome.Agrees => "agrees",
        FindingOutcome.Differs => "differs",
        FindingOutcome.Undecided => "undecided",
        FindingOutcome.NothingRead => "nothing-read",
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "No word for this outcome."),
    };

    internal static string For(AttestationStatus status) => status switch
    {
        AttestationStatus.Attested => "attested",
        AttestationStatus.PeriodCopy => "period-copy",
        AttestationStatus.Reproduction => "reproduction",
        _ => throw new ArgumentOutOfRangeException(nameof(status), status, "No word for this status."),
    };

    internal static string For(DateKind kind) => kind switch
    {
        DateKind.Form => "form",
        DateKind.Address => "address",
        DateKind.AddressOfOthers => "address-of-others",
        DateKind.SecondName => "second-name",
        DateKind.Wording => "wording",
        DateKind.Style => "style",
        DateKind.Construction => "construction",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No word for this kind."),
    };

    internal static string For(SetKind kind) => kind switch
    {
        SetKind.Raking => "raking",
        SetKind.Turns => "turns",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No word for this kind of set."),
    };

    internal static string For(LimitKind kind) => kind switch
    {
        LimitKind.Pixels => "pixels",
        LimitKind.Focus => "focus",
        LimitKind.Motion => "motion",
        LimitKind.Glare => "glare",
        LimitKind.TooDark => "too-dark",
        LimitKind.TooBright => "too-bright",
        LimitKind.LightAlongStrokes => "light-along-strokes",
        LimitKind.FlatLight => "flat-light",
        LimitKind.Angle => "angle",
        LimitKind.CutByFrame => "cut-by-frame",
        LimitKind.Compression => "compression",
        LimitKind.NoScale => "no-scale",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No word for this limit."),
    };

    internal static string For(CircleRole role) => role switch
    {
        CircleRole.Outer => "outer",
        CircleRole.Clear => "clear",
        CircleRole.Stop => "stop",
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "No word for this circle."),
    };
}
