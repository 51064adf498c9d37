namespace InscriptionLab.Cells.Fitting;

/// <summary>A group of inputs of the adjustment: one row of the uncertainty budget.</summary>
public enum SceneInput
{
    /// <summary>Points read on the scale.</summary>
    ScalePoints,

    /// <summary>Edge points read on the outer rim.</summary>
    OuterEdge,

    /// <summary>Edge points read on the clear aperture.</summary>
    ClearEdge,

    /// <summary>Edge points read on the stop.</summary>
    StopEdge,

    /// <summary>Focal length assumed or given before anything is read.</summary>
    Focal,

    /// <summary>Height of the rim above the scale's plane.</summary>
    PlaneOffset,

    /// <summary>How exactly the circles share one axis.</summary>
    Concentricity,

    /// <summary>Depth of the clear aperture and of the stop below the rim.</summary>
    Depth,

    /// <summary>How round the circles are seen.</summary>
    Roundness,

    /// <summary>Distortion left by the lens.</summary>
    Distortion,
}
