namespace InscriptionLab.Page.Bench;

/// <summary>How far a stage is.</summary>
internal enum StageStatus
{
    /// <summary>Its turn has not come.</summary>
    Waiting,

    /// <summary>It runs.</summary>
    Running,

    /// <summary>It gave a result.</summary>
    Done,

    /// <summary>It looked and could not tell.</summary>
    Declined,

    /// <summary>A person gave the result.</summary>
    ByHand,

    /// <summary>Something around it is not as it must be.</summary>
    Failed,
}
