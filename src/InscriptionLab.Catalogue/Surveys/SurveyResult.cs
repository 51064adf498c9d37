using System;
using System.Collections.Immutable;

namespace InscriptionLab.Surveys;

/// <summary>What a survey came to.</summary>
/// <param name="Photos">Files in all.</param>
/// <param name="ExaminedNow">Photos that this run examined.</param>
/// <param name="Unusable">Files that could not be examined.</param>
/// <param name="Same">Files whose bytes were seen under another name.</param>
/// <param name="Others">Files beside the photos that are no photos.</param>
/// <param name="Damaged">Lines of the journal that were damaged and left out; photos that they told of were examined again.</param>
/// <param name="Unopened">Folders that could not be opened.</param>
/// <param name="Elapsed">Time of this run.</param>
/// <param name="Counts">Findings counted.</param>
public sealed record SurveyResult(int Photos, int ExaminedNow, int Unusable, int Same, int Others, int Damaged, ImmutableArray<string> Unopened, TimeSpan Elapsed, ImmutableArray<FindingCount> Counts);
