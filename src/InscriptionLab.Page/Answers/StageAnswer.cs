namespace InscriptionLab.Page.Answers;

/// <summary>How far one stage is.</summary>
/// <param name="Name">photo, tube, strip, reading or finding.</param>
/// <param name="Status">waiting, running, done, declined, by-hand or failed.</param>
/// <param name="Seconds">How long it took; null where it did not run.</param>
internal sealed record StageAnswer(string Name, string Status, double? Seconds);
