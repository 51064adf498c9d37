namespace InscriptionLab.Assess.Lamps;

/// <summary>The light of one photo as told, beside the truth.</summary>
/// <param name="File">The photo.</param>
/// <param name="Mode">The truth's kind of light.</param>
/// <param name="Height">True height of the lamp over the surface at the lettering, degrees; not a number without a lamp.</param>
/// <param name="True">True direction in the photo, degrees; likewise.</param>
/// <param name="Told">Direction told, degrees; not a number where it was not told.</param>
/// <param name="Uncertainty">Its standard uncertainty, degrees; likewise.</param>
internal sealed record LampCase(string File, string Mode, double Height, double True, double Told, double Uncertainty)
{
    /// <summary>Lamps higher than this have no side worth telling.</summary>
    private const double Raking = 45;

    /// <summary>Gets a value indicating whether there is a side to tell.</summary>
    internal bool HasSide => Height is > 0 and <= Raking;

    /// <summary>Gets a value indicating whether a side was told.</summary>
    internal bool IsTold => double.IsFinite(Told);

    /// <summary>Gets how far the direction told lies from the true one, degrees either way.</summary>
    internal double Error => System.Math.Abs(System.Math.IEEERemainder(Told - True, 360));
}
