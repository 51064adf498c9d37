namespace InscriptionLab.Evidence;

/// <summary>What on a piece tells of years.</summary>
public enum DateKind
{
    /// <summary>A form of the list, spelt as on the piece.</summary>
    Form,

    /// <summary>An address that the list gives to the house.</summary>
    Address,

    /// <summary>An address that the list gives only to others.</summary>
    AddressOfOthers,

    /// <summary>A second house named on the piece.</summary>
    SecondName,

    /// <summary>Words with a first year.</summary>
    Wording,

    /// <summary>The style of the lettering.</summary>
    Style,

    /// <summary>How the piece is made.</summary>
    Construction,
}
