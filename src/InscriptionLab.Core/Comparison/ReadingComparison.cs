using System.Collections.Immutable;
using InscriptionLab.Readings;
using InscriptionLab.References;

namespace InscriptionLab.Comparison;

/// <summary>A reading beside a reference list. The reading is the one that went in, untouched.</summary>
/// <param name="Reading">The reading.</param>
/// <param name="References">The list.</param>
/// <param name="Nearest">Nearest forms, nearest first, each form once at the place where it fits best; empty where no letter was read or the list is empty.</param>
public sealed record ReadingComparison(Reading Reading, ReferenceList References, ImmutableArray<NearestForm> Nearest);
