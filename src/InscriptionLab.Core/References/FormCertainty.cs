namespace InscriptionLab.References;

/// <summary>How sure the compiler of the list is of a row.</summary>
public enum FormCertainty
{
    /// <summary>Seen on a signed and documented piece.</summary>
    Certain,

    /// <summary>Seen, the piece not documented.</summary>
    Probable,

    /// <summary>Reported by others only.</summary>
    Possible,
}
