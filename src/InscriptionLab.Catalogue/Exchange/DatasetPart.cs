namespace InscriptionLab.Exchange;

/// <summary>One part of a data set.</summary>
/// <param name="Name">train, validation or test.</param>
/// <param name="Marks">Its lines.</param>
/// <param name="Objects">Its objects.</param>
public sealed record DatasetPart(string Name, int Marks, int Objects);
