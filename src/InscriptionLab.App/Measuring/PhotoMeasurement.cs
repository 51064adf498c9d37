using System.Collections.Immutable;
using InscriptionLab.Cells;
using InscriptionLab.Optics;
using InscriptionLab.Photos;

namespace InscriptionLab.App.Measuring;

/// <summary>Everything that one photo of a lens cell gave.</summary>
/// <param name="Photo">The photo.</param>
/// <param name="Measurement">The measurement; null where the photo gives none, and then <paramref name="Warnings"/> says why.</param>
/// <param name="Warnings">Sentences for the user.</param>
internal sealed record PhotoMeasurement(Photo Photo, CellMeasurement? Measurement, ImmutableArray<string> Warnings)
{
    /// <summary>Gets what follows from aperture and stop for the telescope; null where nothing else is known of it.</summary>
    internal OpticsAccount? Optics { get; init; }
}
