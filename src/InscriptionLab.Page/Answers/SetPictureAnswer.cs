using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>A picture of several photos together.</summary>
/// <param name="Name">relight, grooves or strip; part of addresses.</param>
/// <param name="Size">Columns and rows.</param>
internal sealed record SetPictureAnswer(string Name, ImmutableArray<int> Size);
