using System;

namespace InscriptionLab.Page.Answers;

/// <summary>One answer that a person gave of the piece.</summary>
/// <param name="Feature">The question.</param>
/// <param name="Observation">The answer.</param>
/// <param name="Person">Who.</param>
/// <param name="At">When.</param>
internal sealed record SeenAnswer(string Feature, string Observation, string Person, DateTimeOffset At);
