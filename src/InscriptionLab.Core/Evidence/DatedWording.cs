namespace InscriptionLab.Evidence;

/// <summary>Words that were not in use, or not required, before a year. Their absence tells nothing.</summary>
/// <param name="Words">The words, in capitals and without punctuation.</param>
/// <param name="MustBeWholeLine">True where they count only alone on a line.</param>
/// <param name="NotBefore">The year.</param>
/// <param name="Basis">law, museum or memory.</param>
/// <param name="Source">The law or record.</param>
/// <param name="Note">Remarks.</param>
public sealed record DatedWording(string Words, bool MustBeWholeLine, int NotBefore, string Basis, string Source, string Note)
{
    /// <summary>Share of pieces with such words that are no earlier: a word can be cut later, and a law can be misread.</summary>
    internal const double Coverage = 0.98;
}
