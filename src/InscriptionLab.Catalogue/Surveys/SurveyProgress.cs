using System;

namespace InscriptionLab.Surveys;

/// <summary>How far a survey is.</summary>
/// <param name="Done">Files done, those of earlier runs included.</param>
/// <param name="Total">All files.</param>
/// <param name="Unusable">Files that could not be examined.</param>
/// <param name="PerSecond">Photos a second in this run.</param>
/// <param name="Left">Time left at this rate; null before the first photo is done.</param>
public sealed record SurveyProgress(int Done, int Total, int Unusable, double PerSecond, TimeSpan? Left);
