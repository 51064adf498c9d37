using InscriptionLab.Cells;

namespace InscriptionLab.Vision.Cells;

/// <summary>An inner circle with its traced edge.</summary>
/// <param name="Role">What it is taken for.</param>
/// <param name="Radius">Radius in millimetres at its depth, as first seen.</param>
/// <param name="Depth">Depth below the rim in millimetres at which its edge runs most evenly round the axis.</param>
/// <param name="Trace">The traced edge.</param>
internal sealed record InnerCircle(CircleRole Role, double Radius, double Depth, TracedCircle Trace);
