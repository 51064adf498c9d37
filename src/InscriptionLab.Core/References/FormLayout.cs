namespace InscriptionLab.References;

/// <summary>How the words of a mark are laid out.</summary>
public enum FormLayout
{
    /// <summary>All on one line.</summary>
    OneLine,

    /// <summary>The name on one line, the place on the next.</summary>
    NameOverPlace,

    /// <summary>The name itself runs over several lines.</summary>
    SeveralLines,
}
