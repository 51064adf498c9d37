using System;

namespace InscriptionLab.Page.Bench;

/// <summary>Says that a letter or a line is a person's.</summary>
/// <param name="Person">Who.</param>
/// <param name="At">When.</param>
/// <param name="Was">What the program had there; empty where it had nothing.</param>
internal sealed record HandMark(string Person, DateTimeOffset At, string Was);
