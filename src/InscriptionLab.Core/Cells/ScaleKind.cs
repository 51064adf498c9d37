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
}
