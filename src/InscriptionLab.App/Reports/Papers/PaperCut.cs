namespace InscriptionLab.App.Reports.Papers;

/// <summary>A small picture as a PNG file.</summary>
/// <param name="File">The file's bytes.</param>
/// <param name="Width">Columns.</param>
/// <param name="Height">Rows.</param>
internal sealed record PaperCut(byte[] File, int Width, int Height);
