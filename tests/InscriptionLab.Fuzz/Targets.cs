using System;
using System.Collections.Frozen;
using System.Collections.Generic;

namespace InscriptionLab.Fuzz;

/// <summary>Every way in which a stranger's bytes reach the program, each as a function that must take any bytes or refuse them with a sentence.</summary>
public static class Targets
{
    /// <summary>Gets the targets by name.</summary>
    public static FrozenDictionary<string, Action<byte[]>> All { get; } = new Dictionary<string, Action<byte[]>>
    {
        ["list"] = ListTargets.List,
        ["list-round"] = ListTargets.Round,
        ["mapping"] = ListTargets.Mapping,
        ["table"] = ListTargets.Table,
        ["linked-art"] = ListTargets.LinkedArt,
        ["history"] = ListTargets.History,
        ["checklist"] = ListTargets.Checklist,
        ["construction"] = ListTargets.Construction,
        ["record"] = KeptTargets.Record,
        ["archive"] = KeptTargets.Archive,
        ["journal"] = KeptTargets.Journal,
        ["sidecar"] = KeptTargets.Sidecar,
        ["job"] = KeptTargets.Job,
        ["mark-picture"] = KeptTargets.MarkPicture,
        ["search"] = KeptTargets.Search,
        ["models"] = FileTargets.Models,
        ["calibration"] = FileTargets.Calibration,
        ["photo-header"] = FileTargets.PhotoHeader,
        ["photo"] = FileTargets.Photo,
        ["values"] = ArgumentTargets.Values,
        ["command-line"] = ArgumentTargets.CommandLine,
        ["optics"] = ArgumentTargets.Optics,
    }.ToFrozenDictionary(StringComparer.Ordinal);
}
