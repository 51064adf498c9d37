using InscriptionLab.Measures;

namespace InscriptionLab.Strips;

/// <summary>How two photos of a tube fit each other by what their surfaces show.</summary>
/// <param name="First">Place of the one photo in the set, from 0.</param>
/// <param name="Second">Place of the other, above <paramref name="First"/>.</param>
/// <param name="Turn">Angle by which the tube was turned from the first to the second; positive toward the lower side of the strip.</param>
/// <param name="AxialShift">How far it moved along its axis, in radii.</param>
/// <param name="Agreement">Correlation of the details that both show, -1 to 1.</param>
/// <param name="Clearness">How far that correlation stands out, in standard deviations of the correlations at all other shifts.</param>
public sealed record TurnMatch(int First, int Second, Angle Turn, double AxialShift, double Agreement, double Clearness);
