using System;

namespace InscriptionLab.Page.Bench;

/// <summary>How far one stage is on one photo.</summary>
/// <param name="Stage">photo, tube, strip, reading or finding.</param>
/// <param name="Status">How far.</param>
/// <param name="Elapsed">How long it took; null before the end, and where the result was kept from before.</param>
internal sealed record StageProgress(string Stage, StageStatus Status, TimeSpan? Elapsed);
