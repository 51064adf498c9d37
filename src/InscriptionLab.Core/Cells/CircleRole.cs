namespace InscriptionLab.Cells;

/// <summary>What a circle of a lens cell is.</summary>
public enum CircleRole
{
    /// <summary>Outer rim of the cell.</summary>
    Outer,

    /// <summary>Clear aperture.</summary>
    Clear,

    /// <summary>Aperture stop.</summary>
    Stop,
}
