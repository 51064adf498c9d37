using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Scales;

/// <summary>A corner where four squares of a checkerboard meet.</summary>
/// <param name="I">Place in the lattice, in squares along its first axis.</param>
/// <param name="J">Place in the lattice, in squares along its second axis.</param>
/// <param name="At">Where the picture shows it.</param>
internal readonly record struct LatticeCorner(int I, int J, PixelPoint At);
