using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace InscriptionLab.Assess.Truths;

/// <summary>The light of a rendered photo.</summary>
internal sealed record TruthLight
{
    /// <summary>Gets raking (one lamp low over the surface), flash (one beside the camera) or diffuse.</summary>
    [JsonPropertyName("mode")]
    public required string Mode { get; init; }

    /// <summary>Gets the lamps; none where the light comes from everywhere.</summary>
    [JsonPropertyName("lamps")]
    public ImmutableArray<TruthLamp> Lamps { get; init; } = [];
}

/// <summary>One lamp. The tube's axis runs along X through y = 0, z = radius; the table is z = 0.</summary>
internal sealed record TruthLamp
{
    /// <summary>Gets its place, millimetres.</summary>
    [JsonPropertyName("position_mm")]
    public ImmutableArray<double> Position { get; init; } = [];
}
