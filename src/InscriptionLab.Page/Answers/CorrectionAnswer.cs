using System;

namespace InscriptionLab.Page.Answers;

/// <summary>One correction.</summary>
/// <param name="Id">Number in the piece.</param>
/// <param name="Photo">Photo it was made on; empty where it is about the piece itself.</param>
/// <param name="Kind">tube, ring, line, line-removed, letter, lamps or seen.</param>
/// <param name="Person">Who made it.</param>
/// <param name="At">When.</param>
/// <param name="Was">What stood there; empty where that has no words.</param>
/// <param name="Becomes">What the person made of it; empty where that has no words.</param>
/// <param name="SetAside">True where what it was made on is gone.</param>
internal sealed record CorrectionAnswer(int Id, string Photo, string Kind, string Person, DateTimeOffset At, string Was, string Becomes, bool SetAside);
