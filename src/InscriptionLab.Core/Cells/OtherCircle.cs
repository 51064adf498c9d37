using InscriptionLab.Measures;

namespace InscriptionLab.Cells;

/// <summary>A circle about the cell's axis that was seen and given no role: a bevel, the far end of a bore, a retaining ring, a reflection. Shown so that a person can see what else the measured ones might have been.</summary>
/// <param name="Diameter">Diameter at the depth at which its edge runs most evenly; without an uncertainty, because it is no measurement.</param>
/// <param name="Depth">That depth below the rim.</param>
/// <param name="SeenShare">Share of the outline, 0 to 1, along which an edge was seen.</param>
/// <param name="Ellipse">The circle in the photo.</param>
public sealed record OtherCircle(Length Diameter, Length Depth, double SeenShare, PixelEllipse Ellipse);
