using System.Collections.Immutable;
using InscriptionLab.Cells;
using InscriptionLab.Optics;

namespace InscriptionLab.App.Measuring;

/// <summary>Everything that one call of <c>measure</c> gave.</summary>
/// <param name="Photos">Each photo.</param>
/// <param name="Together">Circles of one cell from all photos; empty where the user does not say that they show one.</param>
/// <param name="Optics">What follows from the circles of all photos for the telescope; null where nothing else is known of it.</param>
internal sealed record MeasuredPhotos(ImmutableArray<PhotoMeasurement> Photos, ImmutableArray<RepeatedCircle> Together, OpticsAccount? Optics);
