using System.Collections.Immutable;
using InscriptionLab.App.Records;

namespace InscriptionLab.Assess;

/// <summary>What the program said of the photos of a folder, before any truth was looked at.</summary>
/// <param name="Photos">Examined photos.</param>
/// <param name="Sets">Photos read together.</param>
/// <param name="Cells">Measured cells.</param>
/// <param name="Failures">One sentence for each photo that could not be used.</param>
/// <param name="Seconds">Wall-clock seconds of each photo, examined or measured, in the order in which they ran.</param>
internal sealed record Predictions(
    ImmutableArray<PhotoRecord> Photos,
    ImmutableArray<SetRecord> Sets,
    ImmutableArray<MeasureRecord> Cells,
    ImmutableArray<string> Failures,
    ImmutableArray<double> Seconds);
