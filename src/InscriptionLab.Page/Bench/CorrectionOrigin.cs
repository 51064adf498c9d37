using System;

namespace InscriptionLab.Page.Bench;

/// <summary>Where a correction comes from.</summary>
/// <param name="Id">Number in the piece, from 1.</param>
/// <param name="PhotoId">Photo it was made on; empty where it is about the piece itself.</param>
/// <param name="Person">Who made it, as the person wrote it.</param>
/// <param name="At">When.</param>
/// <param name="Basis">What it was made on: the corrections of earlier stages it stands on. Made on something else than what is there now, it is set aside.</param>
internal sealed record CorrectionOrigin(int Id, string PhotoId, string Person, DateTimeOffset At, string Basis);
