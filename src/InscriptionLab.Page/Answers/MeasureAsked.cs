namespace InscriptionLab.Page.Answers;

/// <summary>A measurement that the page asks for.</summary>
/// <param name="Scale">Kind and size of the scale, as on the command line; null or empty to look for any.</param>
/// <param name="OffsetMm">Height of the rim above the scale; null where unknown.</param>
internal sealed record MeasureAsked(string? Scale, double? OffsetMm);
