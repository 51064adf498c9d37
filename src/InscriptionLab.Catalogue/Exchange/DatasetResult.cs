using System.Collections.Immutable;

namespace InscriptionLab.Exchange;

/// <summary>What a data set holds.</summary>
/// <param name="Marks">Lines of lettering.</param>
/// <param name="Letters">Letters cut out of them.</param>
/// <param name="Objects">Objects that the lines come from.</param>
/// <param name="Groups">Groups of marks that look alike.</param>
/// <param name="Corrected">Lines that persons corrected.</param>
/// <param name="Parts">Training, validation and test with their lines and objects.</param>
/// <param name="Warnings">Sentences on what the set lacks.</param>
public sealed record DatasetResult(
    int Marks,
    int Letters,
    int Objects,
    int Groups,
    int Corrected,
    ImmutableArray<DatasetPart> Parts,
    ImmutableArray<string> Warnings);
