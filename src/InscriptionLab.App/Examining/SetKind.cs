namespace InscriptionLab.App.Examining;

/// <summary>Why several photos belong together.</summary>
internal enum SetKind
{
    /// <summary>One view under different lamps.</summary>
    Raking,

    /// <summary>The tube was turned between the photos.</summary>
    Turns,
}
