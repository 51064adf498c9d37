namespace InscriptionLab.Advice;

/// <summary>What can limit a photo of lettering.</summary>
public enum LimitKind
{
    /// <summary>Too few pixels on the letters.</summary>
    Pixels,

    /// <summary>Out of focus: edges are wide in every direction.</summary>
    Focus,

    /// <summary>Camera or tube moved: edges are wide in one direction.</summary>
    Motion,

    /// <summary>Part of the lettering is washed out by a reflection.</summary>
    Glare,

    /// <summary>The photo is too dark.</summary>
    TooDark,

    /// <summary>The whole lettering is washed out.</summary>
    TooBright,

    /// <summary>The light runs along the strokes of one direction, which hides them.</summary>
    LightAlongStrokes,

    /// <summary>The light comes from everywhere or from the camera: grooves hardly stand out.</summary>
    FlatLight,

    /// <summary>The lettering faces away from the camera.</summary>
    Angle,

    /// <summary>The frame cuts the lettering.</summary>
    CutByFrame,

    /// <summary>The file was squeezed so hard that its blocks show.</summary>
    Compression,

    /// <summary>Nothing in the photo says how large anything is. It limits measuring, not reading.</summary>
    NoScale,
}
