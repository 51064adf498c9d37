using System;
using InscriptionLab.App.Reports;

namespace InscriptionLab.App.Tests;

/// <summary>Provenance for tests.</summary>
internal static class Provenances
{
    internal static Provenance Some { get; } = new(
        "InscriptionLab 0",
        DateTimeOffset.UnixEpoch,
        "list.csv",
        "bb",
        [new ModelFact("reader.onnx", "aa")],
        ["--as separate"],
        [new StageOptions("photo", new { Limit = 1 })]);
}
