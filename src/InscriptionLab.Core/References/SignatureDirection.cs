namespace InscriptionLab.References;

/// <summary>How a signature runs on the draw tube.</summary>
public enum SignatureDirection
{
    /// <summary>Along the tube, last letter nearest the eyepiece.</summary>
    TowardEyepiece,

    /// <summary>Along the tube, last letter nearest the objective.</summary>
    TowardObjective,

    /// <summary>Round the tube.</summary>
    Around,
}
