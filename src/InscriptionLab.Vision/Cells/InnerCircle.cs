using InscriptionLab.Cells;

namespace InscriptionLab.Vision.Cells;

/// <summary>An inner circle as it is first seen, before its edge is traced.</summary>
/// <param name="Role">What it is taken for.</param>
/// <param name="Radius">Radius in millimetres at its depth.</param>
/// <param name="Depth">Depth below the rim in millimetres at which its edge runs most evenly round the axis.</param>
/// <param name="Strength">Mean significance of its edge, 0 to 4.</param>
internal sealed record InnerCircle(CircleRole Role, double Radius, double Depth, double Strength);
