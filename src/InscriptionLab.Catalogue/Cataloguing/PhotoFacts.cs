namespace InscriptionLab.Cataloguing;

/// <summary>What is kept of a photo itself.</summary>
/// <param name="File">File as the user named it.</param>
/// <param name="Sha256">SHA-256 of its bytes, 64 lower-case hexadecimal digits.</param>
/// <param name="Width">Columns, upright.</param>
/// <param name="Height">Rows, upright.</param>
/// <param name="PerceptualHash">64 bits that stay nearly the same when the picture is saved again; null where not taken.</param>
public sealed record PhotoFacts(string File, string Sha256, int Width, int Height, ulong? PerceptualHash);
