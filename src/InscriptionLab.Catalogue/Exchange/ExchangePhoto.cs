using System.Collections.Immutable;
using System.IO;

namespace InscriptionLab.Exchange;

/// <summary>One photo with its latest reading and its latest measurement.</summary>
/// <param name="Sha256">Hash of its bytes.</param>
/// <param name="File">File as it was named.</param>
/// <param name="Width">Columns, upright.</param>
/// <param name="Height">Rows, upright.</param>
/// <param name="Reading">The latest examination of its lettering; null where there is none.</param>
/// <param name="Measuring">The latest measurement; null where there is none.</param>
/// <param name="Measurements">What that one measured.</param>
public sealed record ExchangePhoto(
    string Sha256,
    string File,
    int Width,
    int Height,
    ExchangeExamination? Reading,
    ExchangeExamination? Measuring,
    ImmutableArray<Cataloguing.MeasurementEntry> Measurements)
{
    /// <summary>Gets the latest joint reading that hangs on this photo; null where there is none.</summary>
    public ExchangeExamination? Joint { get; init; }

    /// <summary>Gets the file's name without its folders.</summary>
    public string FileName => Path.GetFileName(File.Replace('\\', '/'));
}
