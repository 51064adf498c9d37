using System.Collections.Immutable;
using InscriptionLab.Readings;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;

namespace InscriptionLab.App.Examining;

/// <summary>A surface and what was read on it.</summary>
/// <param name="Tube">The tube; null where none was found.</param>
/// <param name="Strip">The tube or the ring laid flat, or the photo as it is.</param>
/// <param name="Reading">The reading; without lines where nothing is cut.</param>
internal sealed record ReadSurface(Tube? Tube, Strip Strip, Reading Reading)
{
    /// <summary>Gets the ring whose face carries the lettering; null where none does.</summary>
    internal RingFace? Ring { get; init; }

    /// <summary>Gets sentences for the user: what was assumed, what could not be told.</summary>
    internal ImmutableArray<string> Warnings { get; init; } = [];
}
