namespace InscriptionLab.Vision.Pictures;

/// <summary>What a line on a picture shows; each has a colour of its own that stands out on brass and on dark metal.</summary>
public enum MarkInk
{
    /// <summary>A letter or a measured circle.</summary>
    Letter,

    /// <summary>An outline of the tube, or what gave the scale.</summary>
    Outline,

    /// <summary>The axis of the tube.</summary>
    Axis,
}
