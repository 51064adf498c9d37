using System.Collections.Immutable;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>A picture of a paper with the lines drawn on it.</summary>
/// <param name="File">JPEG bytes; the file may be smaller than the picture that it shows.</param>
/// <param name="Width">Columns of the picture in which the marks count.</param>
/// <param name="Height">Its rows.</param>
/// <param name="Marks">Lines drawn on it.</param>
/// <param name="PixelsPerMillimetre">Scale in the plane of what is shown; null where nothing in the photo gives one.</param>
/// <param name="Caption">What it shows.</param>
internal sealed record PaperPicture(byte[] File, int Width, int Height, ImmutableArray<PaperMark> Marks, double? PixelsPerMillimetre, string Caption);
