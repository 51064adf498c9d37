using System.Text.Json.Serialization;

namespace InscriptionLab.Assess.Truths;

/// <summary>What gives the scale in a photo of a cell.</summary>
internal sealed record TruthScale
{
    [JsonPropertyName("type")]
    public required string Type { get; init; }

    [JsonPropertyName("coplanar")]
    public bool Coplanar { get; init; }

    /// <summary>Gets how far the scale lies below the rim.</summary>
    [JsonPropertyName("mm_below_rim_plane")]
    public double BelowRim { get; init; }

    /// <summary>Gets the side of a square of a checkerboard, in millimetres.</summary>
    [JsonPropertyName("pitch_mm")]
    public double Square { get; init; }

    /// <summary>Gets the distance of neighbouring ticks of a rule, in millimetres.</summary>
    [JsonPropertyName("tick_pitch_mm")]
    public double TickPitch { get; init; }

    /// <summary>Gets the side of a marker, in millimetres.</summary>
    [JsonPropertyName("side_mm")]
    public double Marker { get; init; }
}
