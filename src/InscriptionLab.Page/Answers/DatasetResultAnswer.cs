using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>What a data set holds.</summary>
/// <param name="Marks">Lines of lettering.</param>
/// <param name="Letters">Letters cut out of them.</param>
/// <param name="Objects">Objects.</param>
/// <param name="Groups">Groups of marks that look alike.</param>
/// <param name="Corrected">Lines that persons corrected.</param>
/// <param name="Parts">Its parts.</param>
/// <param name="Warnings">What it lacks.</param>
internal sealed record DatasetResultAnswer(int Marks, int Letters, int Objects, int Groups, int Corrected, ImmutableArray<DatasetPartAnswer> Parts, ImmutableArray<string> Warnings);
