using System;

namespace InscriptionLab.App.Examining;

/// <summary>How long one stage took on one photo.</summary>
/// <param name="Stage">Name of the stage.</param>
/// <param name="Elapsed">Wall-clock time.</param>
internal sealed record StageTime(string Stage, TimeSpan Elapsed);
