using InscriptionLab.Readings;
using InscriptionLab.Tubes;

namespace InscriptionLab.Gathering;

/// <summary>What one photo brings to a joint reading.</summary>
/// <param name="Tube">The tube; null where none was found.</param>
/// <param name="Reading">The photo's own reading.</param>
public sealed record GatheredPhoto(Tube? Tube, Reading Reading)
{
    /// <summary>Gets how many photos went into this picture; what was read on it counts as much as readings of all of them.</summary>
    /// <value>1, or the photos of the set from which the form of a surface was worked out.</value>
    public int MadeOf { get; init; } = 1;
}
