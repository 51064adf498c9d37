using System;

namespace InscriptionLab.Page.Answers;

/// <summary>A person's hand.</summary>
/// <param name="Person">Who.</param>
/// <param name="At">When.</param>
/// <param name="Was">What the program had there.</param>
internal sealed record HandAnswer(string Person, DateTimeOffset At, string Was);
