namespace InscriptionLab.Comparison;

/// <summary>What one step of an alignment lays over what.</summary>
internal enum AlignmentOperation : byte
{
    /// <summary>The alignment begins here.</summary>
    Start,

    /// <summary>One place over one letter of the form, the same or another.</summary>
    Match,

    /// <summary>No place over one letter of the form.</summary>
    Missing,

    /// <summary>One place over nothing.</summary>
    Added,

    /// <summary>Two places over two letters in the other order.</summary>
    Swap,

    /// <summary>One place over two letters of the form, which the reader lists as one of its alternatives.</summary>
    Pair,
}
