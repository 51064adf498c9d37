using System;

namespace InscriptionLab.Exchange;

/// <summary>What a user reads in a line.</summary>
/// <param name="Text">The user's reading.</param>
/// <param name="By">The user.</param>
/// <param name="At">When.</param>
/// <param name="Reason">Why.</param>
public sealed record LineCorrection(string Text, string By, DateTimeOffset At, string Reason);
