using System;

namespace InscriptionLab.Page.Answers;

/// <summary>One examination of the catalogue.</summary>
/// <param name="Number">Its number.</param>
/// <param name="Object">Name of the object.</param>
/// <param name="File">The photo's name.</param>
/// <param name="Made">When.</param>
/// <param name="Outcome">agrees, differs, undecided, nothing-read, or empty for a measurement.</param>
/// <param name="Text">All lines.</param>
/// <param name="Nearest">The nearest form.</param>
/// <param name="Maker">Its maker.</param>
/// <param name="Edits">Letters by which it differs from what was looked for.</param>
/// <param name="Alike">How alike it looks; null where that was not asked.</param>
internal sealed record CatalogueRowAnswer(long Number, string Object, string File, DateTimeOffset Made, string Outcome, string Text, string Nearest, string Maker, int Edits, AlikeAnswer? Alike);
