using System.Text.Json.Serialization;

namespace InscriptionLab.Assess.Truths;

/// <summary>The camera that took a rendered photo.</summary>
internal sealed record TruthCamera
{
    [JsonPropertyName("focal_px")]
    public double Focal { get; init; }
}
