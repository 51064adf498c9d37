using InscriptionLab.Readings;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;

namespace InscriptionLab.App.Examining;

/// <summary>A surface and what was read on it.</summary>
/// <param name="Tube">The tube; null where none was found.</param>
/// <param name="Strip">The tube laid flat, or the photo as it is.</param>
/// <param name="Reading">The reading; without lines where nothing is cut.</param>
internal sealed record ReadSurface(Tube? Tube, Strip Strip, Reading Reading);
