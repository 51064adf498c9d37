namespace InscriptionLab.Surveys;

/// <summary>How many of a group came to one finding.</summary>
/// <param name="Group">photos, objects, or the name under which objects are offered.</param>
/// <param name="Outcome">The finding.</param>
/// <param name="Count">How many.</param>
/// <param name="Of">Of how many.</param>
/// <param name="Interval">Wilson interval of the proportion, 95 %.</param>
public sealed record FindingCount(string Group, string Outcome, int Count, int Of, WilsonInterval Interval);
