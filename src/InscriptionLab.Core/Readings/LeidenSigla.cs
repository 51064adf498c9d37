namespace InscriptionLab.Readings;

/// <summary>Which of the two usual signs stands for a letter whose traces cannot be read.</summary>
public enum LeidenSigla
{
    /// <summary>A dot for each letter, as agreed at Leiden in 1931 and usual in papyrology. A full stop that is cut looks the same; the reading itself has "?" for the letter.</summary>
    Dots,

    /// <summary>A plus for each letter, after Krummrey and Panciera, usual in Latin epigraphy.</summary>
    Pluses,
}
