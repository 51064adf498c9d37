namespace InscriptionLab.App.Records;

/// <summary>A second house named on the piece.</summary>
/// <param name="Form">Its form in the list.</param>
/// <param name="Maker">The house.</param>
internal sealed record SecondNameRecord(string Form, string Maker);
