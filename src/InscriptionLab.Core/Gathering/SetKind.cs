namespace InscriptionLab.Gathering;

/// <summary>Why several photos belong together.</summary>
public enum SetKind
{
    /// <summary>One view under different lamps.</summary>
    Raking,

    /// <summary>The tube was turned about its axis between the photos.</summary>
    Turns,
}
