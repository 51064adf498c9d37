namespace InscriptionLab.References;

/// <summary>One row put into a list, or filled.</summary>
/// <param name="Before">The row before; null where it is new.</param>
/// <param name="After">The row after.</param>
public sealed record ReferenceChange(ReferenceForm? Before, ReferenceForm After);
