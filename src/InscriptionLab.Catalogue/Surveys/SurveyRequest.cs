using System.Collections.Immutable;

namespace InscriptionLab.Surveys;

/// <summary>What is asked of a survey.</summary>
/// <param name="Folders">Folders with photos, searched with all they hold.</param>
/// <param name="Out">Folder of the results; a survey that was stopped there goes on.</param>
/// <param name="Workers">How many photos are examined at a time.</param>
/// <param name="ObjectsFile">CSV that says which photos show which object; null to go by folders.</param>
/// <param name="Settings">Everything that makes one survey's results differ from another's: program, models, list. A stopped survey goes on only under the same.</param>
public sealed record SurveyRequest(ImmutableArray<string> Folders, string Out, int Workers, string? ObjectsFile, string Settings);
