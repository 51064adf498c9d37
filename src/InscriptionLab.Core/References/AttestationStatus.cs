namespace InscriptionLab.References;

/// <summary>What a reference list says of a form.</summary>
public enum AttestationStatus
{
    /// <summary>A form that the house itself used.</summary>
    Attested,

    /// <summary>A form that others used in the house's own time.</summary>
    PeriodCopy,

    /// <summary>A form of modern decorative pieces.</summary>
    Reproduction,
}
