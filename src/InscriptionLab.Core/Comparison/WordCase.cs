namespace InscriptionLab.Comparison;

/// <summary>How a word is written: in capitals, in small letters, with a capital first, or otherwise.</summary>
internal enum WordCase
{
    /// <summary>No letter that has a case.</summary>
    None,

    /// <summary>Capitals only.</summary>
    Capitals,

    /// <summary>Small letters only.</summary>
    Small,

    /// <summary>A capital, then small letters.</summary>
    CapitalFirst,

    /// <summary>Capitals and small letters mixed.</summary>
    Mixed,
}
