using System;

namespace InscriptionLab.Cataloguing;

/// <summary>One examination that was found.</summary>
/// <param name="Examination">Its number.</param>
/// <param name="ObjectKey">Name of the object.</param>
/// <param name="File">The photo's file.</param>
/// <param name="MadeAt">When it was made.</param>
/// <param name="Outcome">The finding.</param>
/// <param name="Text">All lines, corrections laid over, parted by " / ".</param>
/// <param name="Nearest">The nearest form; empty where there is none.</param>
/// <param name="Maker">Maker of the nearest form; empty where there is none.</param>
/// <param name="Edits">How many letters the best line differs by, where letters may differ; otherwise 0.</param>
public sealed record SearchHit(long Examination, string ObjectKey, string File, DateTimeOffset MadeAt, string Outcome, string Text, string Nearest, string Maker, int Edits);
