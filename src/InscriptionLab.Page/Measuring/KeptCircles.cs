using System;
using System.Collections.Immutable;

namespace InscriptionLab.Page.Measuring;

/// <summary>Circles that a person placed in a photo and kept for the report; they stand in place of those that the program found.</summary>
/// <param name="Person">Who.</param>
/// <param name="At">When.</param>
/// <param name="Circles">The circles.</param>
internal sealed record KeptCircles(string Person, DateTimeOffset At, ImmutableArray<KeptCircle> Circles);
