namespace InscriptionLab.Advice;

/// <summary>A part of a line.</summary>
public enum BurntPart
{
    /// <summary>A letter that was read.</summary>
    Letter,

    /// <summary>The space between two words.</summary>
    Gap,

    /// <summary>The metal before the first letter.</summary>
    Before,

    /// <summary>The metal behind the last letter.</summary>
    Behind,
}
