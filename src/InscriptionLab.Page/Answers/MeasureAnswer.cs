using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>What a photo of a cell gave.</summary>
/// <param name="Scale">The scale in words; null where none was found.</param>
/// <param name="PixelsPerMillimetre">Scale at the rim; null where none was found.</param>
/// <param name="Points">Points of the scale.</param>
/// <param name="Circles">The circles.</param>
/// <param name="Warnings">What is to be borne in mind.</param>
internal sealed record MeasureAnswer(string? Scale, double? PixelsPerMillimetre, ImmutableArray<double[]> Points, ImmutableArray<CircleAnswer> Circles, ImmutableArray<string> Warnings);
