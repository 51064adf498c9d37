namespace InscriptionLab.Findings;

/// <summary>What can be said of the lettering beside the reference list.</summary>
public enum FindingOutcome
{
    /// <summary>The lettering agrees letter by letter with an attested form, as far as the photo shows.</summary>
    Agrees,

    /// <summary>The lettering differs from every attested form in letters that the photo shows well enough.</summary>
    Differs,

    /// <summary>This photo cannot decide.</summary>
    Undecided,

    /// <summary>No lettering was read.</summary>
    NothingRead,
}
