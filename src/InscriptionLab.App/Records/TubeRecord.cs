using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace InscriptionLab.App.Records;

/// <summary>Where the tube lies.</summary>
/// <param name="Axis">Two points.</param>
/// <param name="Silhouettes">Two outlines of two points each.</param>
/// <param name="DiameterPx">Distance between the outlines square to the axis, at the middle of the lettering (of the visible tube where nothing is lettered).</param>
internal sealed record TubeRecord(
    ImmutableArray<ImmutableArray<double>> Axis,
    ImmutableArray<ImmutableArray<ImmutableArray<double>>> Silhouettes,
    [property: JsonPropertyName("diameter_px")] double DiameterPx);
