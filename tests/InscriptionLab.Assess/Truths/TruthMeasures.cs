using System.Text.Json.Serialization;

namespace InscriptionLab.Assess.Truths;

/// <summary>Diameters of a cell in millimetres; null where the cell has no such circle.</summary>
internal sealed record TruthMeasures
{
    [JsonPropertyName("outer_mm")]
    public double? Outer { get; init; }

    [JsonPropertyName("clear_mm")]
    public double? Clear { get; init; }

    [JsonPropertyName("stop_mm")]
    public double? Stop { get; init; }

    /// <summary>Gives the diameter of a circle by its role.</summary>
    internal double? Of(string role) => role switch
    {
        "outer" => Outer,
        "clear" => Clear,
        "stop" => Stop,
        _ => null,
    };
}
