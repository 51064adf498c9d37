namespace InscriptionLab.Evidence;

/// <summary>What may be true of the lettering. Three, not two: a spelling near to a famous name may be a trade piece of its time and no modern one.</summary>
public enum Proposition
{
    /// <summary>The house that the lettering names had it cut.</summary>
    House,

    /// <summary>Another had it cut in the house's own time.</summary>
    PeriodOther,

    /// <summary>It was cut for a modern decorative piece.</summary>
    Modern,
}
