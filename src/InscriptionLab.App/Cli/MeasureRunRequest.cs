using System;
using System.Collections.Immutable;
using InscriptionLab.Cells;
using InscriptionLab.Measures;
using InscriptionLab.Optics;

namespace InscriptionLab.App.Cli;

/// <summary>What the user asks of <c>measure</c>.</summary>
/// <param name="Photos">Files as named.</param>
/// <param name="Json">File for JSON Lines, "-" for the screen; null for none.</param>
/// <param name="Out">Folder of the measurement; null for one named after the first photo.</param>
/// <param name="ScaleText">Scale as written.</param>
/// <param name="OffsetText">Height as written.</param>
/// <param name="Camera">File with the camera's calibration; null for none.</param>
/// <param name="Request">What is known of scale and height.</param>
internal sealed record MeasureRunRequest(ImmutableArray<string> Photos, string? Json, string? Out, string? ScaleText, string? OffsetText, string? Camera, MeasureRequest Request)
{
    /// <summary>Gets a value indicating whether the photos show one cell, so that their results are combined.</summary>
    internal bool OneCell { get; init; }

    /// <summary>Gets the catalogue in which the measurements are kept; null for none.</summary>
    internal string? Catalogue { get; init; }

    /// <summary>Gets what else is known of the telescope, for measured aperture and stop; null where nothing is.</summary>
    internal Func<Length, Length?, OpticsRequest>? Optics { get; init; }

    /// <summary>Gets the options as the user could have written them.</summary>
    internal ImmutableArray<string> Asked =>
    [
        .. ScaleText is null ? ImmutableArray<string>.Empty : [$"--scale {ScaleText}"],
        .. OffsetText is null ? ImmutableArray<string>.Empty : [$"--plane-offset {OffsetText}"],
        .. OneCell ? ["--one-cell"] : ImmutableArray<string>.Empty,
        .. Camera is null ? ImmutableArray<string>.Empty : [$"--camera {Camera}"],
    ];
}
