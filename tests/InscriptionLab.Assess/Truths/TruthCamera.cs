using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace InscriptionLab.Assess.Truths;

/// <summary>The camera that took a rendered photo.</summary>
internal sealed record TruthCamera
{
    [JsonPropertyName("focal_px")]
    public double Focal { get; init; }

    /// <summary>Gets the camera's centre, millimetres.</summary>
    [JsonPropertyName("position_mm")]
    public ImmutableArray<double> Position { get; init; } = [];

    /// <summary>Gets the rows of the camera's rotation: its right, down and forward in the world.</summary>
    [JsonPropertyName("rotation_world_to_camera")]
    public ImmutableArray<ImmutableArray<double>> Rotation { get; init; } = [];

    /// <summary>Gets the principal point, counted from the picture's outer corner.</summary>
    [JsonPropertyName("principal_point_px")]
    public ImmutableArray<double> PrincipalPoint { get; init; } = [];
}
