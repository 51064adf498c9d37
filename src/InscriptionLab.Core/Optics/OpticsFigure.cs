namespace InscriptionLab.Optics;

/// <summary>One figure of a telescope with the way it was come by.</summary>
/// <param name="Name">Term of ISO 14132 where it has one.</param>
/// <param name="Value">Value.</param>
/// <param name="Unit">Unit; <c>1</c> for a pure number.</param>
/// <param name="Basis">How it follows, in plain words.</param>
public sealed record OpticsFigure(string Name, double Value, string Unit, string Basis);
