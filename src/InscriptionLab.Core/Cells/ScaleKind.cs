namespace InscriptionLab.Cells;

/// <summary>What kind of thing beside the cell gives the scale.</summary>
public enum ScaleKind
{
    /// <summary>The printable scale card.</summary>
    Card,

    /// <summary>A board of alternating squares.</summary>
    Checkerboard,

    /// <summary>A rule with evenly spaced ticks.</summary>
    Rule,

    /// <summary>Square markers with a coded pattern (ArUco).</summary>
    Aruco,

    /// <summary>A bank or identity card of the size ID-1 (ISO/IEC 7810).</summary>
    Id1,

    /// <summary>A coin or another round disc of known diameter.</summary>
    Disc,

    /// <summary>Two points that the user marks, a known distance apart.</summary>
    Points,
}
