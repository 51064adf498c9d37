namespace InscriptionLab.App.Reports;

/// <summary>The options with which a stage ran.</summary>
/// <param name="Stage">Name of the stage.</param>
/// <param name="Options">The stage's own record of options.</param>
internal sealed record StageOptions(string Stage, object Options);
