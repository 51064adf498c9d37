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
}
