using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace InscriptionLab.App.Records;

/// <summary>One letter.</summary>
/// <param name="Char">The letter, "?" where it cannot be seen.</param>
/// <param name="Probability">How likely it is, 0 to 1.</param>
/// <param name="Alternatives">What else it may be.</param>
/// <param name="Quad">Four corners in the photo, top-left first as the reader sees it.</param>
internal sealed record LetterRecord(
    string Char,
    double Probability,
    ImmutableArray<CandidateRecord> Alternatives,
    ImmutableArray<ImmutableArray<double>> Quad)
{
    /// <summary>Gets how many times narrower the photo shows the letter across the tube than it would on the generatrix facing the camera; null for lettering that was not read off a tube.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? Stretch { get; init; }

    /// <summary>Gets the share of the letter's box that is burnt out; left out below three quarters.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? BlownOut { get; init; }
}
