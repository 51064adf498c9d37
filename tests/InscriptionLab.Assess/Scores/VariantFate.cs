namespace InscriptionLab.Assess.Scores;

/// <summary>What became of a name that is cut with a wrong letter: the one thing that this program must not lose.</summary>
internal enum VariantFate
{
    /// <summary>Read as cut.</summary>
    Kept,

    /// <summary>Read as the right spelling, which is not there: the worst that can happen.</summary>
    Corrected,

    /// <summary>Read in some third way.</summary>
    Misread,
}
