using InscriptionLab.Readings;
using InscriptionLab.Tubes;

namespace InscriptionLab.Gathering;

/// <summary>What one photo brings to a joint reading.</summary>
/// <param name="Tube">The tube; null where none was found.</param>
/// <param name="Reading">The photo's own reading.</param>
public sealed record GatheredPhoto(Tube? Tube, Reading Reading);
