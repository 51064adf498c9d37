namespace InscriptionLab.Assess.Findings;

/// <summary>What a photo's lettering is in truth, beside the attested form.</summary>
internal enum FindingGroup
{
    /// <summary>Spelt as attested.</summary>
    Attested,

    /// <summary>Misspelt, high enough to be read, every letter of the name to be seen.</summary>
    Misspelt,

    /// <summary>Misspelt and lower than what can be asked of a reader, or with letters of the name hidden, burnt out or worn away.</summary>
    Unreadable,
}
