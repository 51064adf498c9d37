using System.Collections.Immutable;
using InscriptionLab.Imaging;

namespace InscriptionLab.Cataloguing;

/// <summary>The picture of one line, laid flat and turned to read from left to right.</summary>
/// <param name="Line">The line of the record, from 0.</param>
/// <param name="Picture">Grey levels.</param>
/// <param name="Boxes">Box of each letter in the picture, in the record's order (spaces left out): left, top, right, bottom in pixels.</param>
public sealed record MarkEntry(int Line, GrayImage Picture, ImmutableArray<ImmutableArray<double>> Boxes);
