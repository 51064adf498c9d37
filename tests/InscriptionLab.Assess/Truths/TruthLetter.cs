using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace InscriptionLab.Assess.Truths;

/// <summary>One letter as it was cut.</summary>
internal sealed record TruthLetter
{
    [JsonPropertyName("char")]
    public required string Char { get; init; }

    [JsonPropertyName("line")]
    public int Line { get; init; }

    [JsonPropertyName("index")]
    public int Index { get; init; }

    /// <summary>Gets the corners in the order top-left, top-right, bottom-right, bottom-left.</summary>
    [JsonPropertyName("quad_px")]
    public ImmutableArray<ImmutableArray<double>> Quad { get; init; } = [];

    /// <summary>Gets the cosine of the angle between the surface at the letter and the line of sight: 1 facing the camera, 0 at the limb.</summary>
    [JsonPropertyName("facing_cos")]
    public double Facing { get; init; }

    [JsonPropertyName("visible")]
    public bool Visible { get; init; }

    [JsonPropertyName("washed_out")]
    public bool WashedOut { get; init; }

    [JsonPropertyName("worn_away")]
    public bool WornAway { get; init; }

    /// <summary>Gets a value indicating whether nobody could see the letter in this photo.</summary>
    [JsonIgnore]
    public bool Hidden => !Visible || WashedOut || WornAway;
}
