using InscriptionLab.Cells.Fitting;

namespace InscriptionLab.Vision.Cells;

/// <summary>An ellipse that edges of the picture may form.</summary>
/// <param name="Ellipse">The ellipse, in the whole picture.</param>
/// <param name="Coverage">Share of its outline along which edges lie on it, 0 to 1.</param>
internal sealed record EllipseCandidate(FittedEllipse Ellipse, double Coverage);
