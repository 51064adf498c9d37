using System.Collections.Immutable;
using InscriptionLab.Cells;
using InscriptionLab.Measures;

namespace InscriptionLab.Threads;

/// <summary>A measured thread.</summary>
/// <param name="Pitch">Pitch with its expanded uncertainty.</param>
/// <param name="Budget">Where the uncertainty comes from.</param>
/// <param name="Crests">Crests that took part.</param>
/// <param name="Comparison">The pitch beside the standard series.</param>
/// <param name="Warnings">Sentences for the user.</param>
public sealed record ThreadMeasurement(Measured Pitch, UncertaintyBudget Budget, int Crests, ThreadComparison Comparison, ImmutableArray<string> Warnings);
