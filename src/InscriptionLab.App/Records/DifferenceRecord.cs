namespace InscriptionLab.App.Records;

/// <summary>One letter that differs from a form.</summary>
/// <param name="Attested">The form's letter; empty where the reading has one too many.</param>
/// <param name="Read">The letter as read; empty where the reading lacks it.</param>
/// <param name="Probability">Probability that they really differ here.</param>
internal sealed record DifferenceRecord(string Attested, string Read, double Probability);
