using InscriptionLab.Cells;
using InscriptionLab.Measures;

namespace InscriptionLab.Page.Measuring;

/// <summary>One circle that a person placed and kept.</summary>
/// <param name="Role">outer, clear or stop.</param>
/// <param name="Ellipse">Its image.</param>
/// <param name="PixelsPerMillimetre">Scale that it was measured on.</param>
/// <param name="Diameter">Its diameter.</param>
/// <param name="Budget">The budget.</param>
internal sealed record KeptCircle(string Role, PixelEllipse Ellipse, double PixelsPerMillimetre, Measured Diameter, UncertaintyBudget Budget);
