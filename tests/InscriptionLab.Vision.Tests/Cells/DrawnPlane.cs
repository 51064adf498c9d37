namespace InscriptionLab.Vision.Tests.Cells;

/// <summary>What is said of the height of a drawn cell's rim above its scale.</summary>
internal enum DrawnPlane
{
    /// <summary>Level, and said to be.</summary>
    Level,

    /// <summary>The scale lies lower by a height that is said.</summary>
    Said,

    /// <summary>Nothing is said: level or not.</summary>
    Unsaid,
}
