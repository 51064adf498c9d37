using System;
using System.Collections.Immutable;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>A report, written down once and put out as a printed page or a web page.</summary>
/// <param name="Title">What it is about.</param>
/// <param name="Made">When it was made.</param>
/// <param name="Program">What made it.</param>
/// <param name="Blocks">Its parts; each inner list begins on a page of its own.</param>
internal sealed record Paper(string Title, DateTimeOffset Made, string Program, ImmutableArray<ImmutableArray<Block>> Blocks);
