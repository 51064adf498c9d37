namespace InscriptionLab.Threads;

/// <summary>Which family of threads a pitch belongs to.</summary>
public enum ThreadFamily
{
    /// <summary>A whole number of turns to the inch, and no standard metric pitch.</summary>
    Inch,

    /// <summary>A standard metric pitch, and no whole number of turns to the inch.</summary>
    Metric,

    /// <summary>Neither: a private thread, as most instrument threads were.</summary>
    Neither,

    /// <summary>The families lie too close for this measurement.</summary>
    CannotTell,
}
