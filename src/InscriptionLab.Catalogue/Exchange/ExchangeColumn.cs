namespace InscriptionLab.Exchange;

/// <summary>One column of a table.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Type">string, integer, number or datetime, as a Frictionless table schema names them.</param>
/// <param name="Description">What it holds, with its unit.</param>
/// <param name="Required">True where no cell is empty.</param>
internal sealed record ExchangeColumn(string Name, string Type, string Description, bool Required);
