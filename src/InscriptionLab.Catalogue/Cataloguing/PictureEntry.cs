using System.Collections.Immutable;

namespace InscriptionLab.Cataloguing;

/// <summary>A picture of photos read together, to be kept with their joint reading.</summary>
/// <param name="Name">What it shows, for instance strip, grooves or relight.</param>
/// <param name="MediaType">image/png or image/jpeg.</param>
/// <param name="Width">Columns.</param>
/// <param name="Height">Rows.</param>
/// <param name="File">The picture file.</param>
public sealed record PictureEntry(string Name, string MediaType, int Width, int Height, ImmutableArray<byte> File);
