using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace InscriptionLab.Assess.Truths;

/// <summary>What is known of one photo. In truth files the outer corner of the top-left pixel is (0, 0), so pixel centres lie at one half: half a pixel is taken off before anything is compared.</summary>
internal sealed record TruthPhoto
{
    [JsonPropertyName("file")]
    public required string File { get; init; }

    [JsonPropertyName("kind")]
    public required string Kind { get; init; }

    [JsonPropertyName("trap")]
    public string? Trap { get; init; }

    [JsonPropertyName("set")]
    public string? Set { get; init; }

    [JsonPropertyName("lines")]
    public ImmutableArray<string> Lines { get; init; } = [];

    [JsonPropertyName("maker")]
    public string? Maker { get; init; }

    [JsonPropertyName("is_variant_of")]
    public string? IsVariantOf { get; init; }

    [JsonPropertyName("upside_down")]
    public bool UpsideDown { get; init; }

    [JsonPropertyName("mirrored")]
    public bool Mirrored { get; init; }

    [JsonPropertyName("style")]
    public string? Style { get; init; }

    [JsonPropertyName("x_height_px")]
    public double? XHeight { get; init; }

    [JsonPropertyName("text_direction")]
    public string? TextDirection { get; init; }

    [JsonPropertyName("tube_diameter_px")]
    public double? TubeDiameter { get; init; }

    [JsonPropertyName("axis_angle_deg")]
    public double? AxisAngle { get; init; }

    /// <summary>Gets the angle by which the tube was turned in its rest, degrees; only the steps between photos of one set mean anything.</summary>
    [JsonPropertyName("tube_turn_deg")]
    public double? Turn { get; init; }

    [JsonPropertyName("axis_px")]
    public ImmutableArray<ImmutableArray<double>> Axis { get; init; } = [];

    [JsonPropertyName("silhouettes_px")]
    public ImmutableArray<ImmutableArray<ImmutableArray<double>>> Silhouettes { get; init; } = [];

    [JsonPropertyName("image_size")]
    public ImmutableArray<int> ImageSize { get; init; } = [];

    [JsonPropertyName("camera")]
    public TruthCamera? Camera { get; init; }

    [JsonPropertyName("light")]
    public TruthLight? Light { get; init; }

    [JsonPropertyName("tube_diameter_mm")]
    public double? TubeDiameterMillimetres { get; init; }

    [JsonPropertyName("letters")]
    public ImmutableArray<TruthLetter> Letters { get; init; } = [];

    [JsonPropertyName("measures")]
    public TruthMeasures? Measures { get; init; }

    [JsonPropertyName("scale_reference")]
    public TruthScale? Scale { get; init; }
}
