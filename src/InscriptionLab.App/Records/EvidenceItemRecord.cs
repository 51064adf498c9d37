namespace InscriptionLab.App.Records;

/// <summary>One feature as evidence.</summary>
/// <param name="Statement">What was seen.</param>
/// <param name="Feature">What was looked at.</param>
/// <param name="Observation">What the table of weights calls it.</param>
/// <param name="Ratios">Its ratios, capped.</param>
/// <param name="Basis">choice, count or opinion.</param>
/// <param name="Source">What the weights rest on.</param>
/// <param name="WouldChange">What would change it.</param>
internal sealed record EvidenceItemRecord(string Statement, string Feature, string Observation, RatiosRecord Ratios, string Basis, string Source, string WouldChange);
