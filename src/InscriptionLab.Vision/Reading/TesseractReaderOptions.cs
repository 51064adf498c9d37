using System.Collections.Immutable;

namespace InscriptionLab.Vision.Reading;

/// <summary>Where and how the second reader looks.</summary>
public sealed record TesseractReaderOptions
{
    /// <summary>Gets the folders that may hold Tesseract's language models, first found first taken.</summary>
    /// <value>Default: where Debian and the usual builds put them.</value>
    public ImmutableArray<string> DataFolders { get; init; } =
        ["/usr/share/tesseract-ocr/5/tessdata", "/usr/share/tessdata", "/usr/local/share/tessdata"];

    /// <summary>Gets the language models in order of preference.</summary>
    /// <value>Default Latin, then English: on 14 made-up words cut in one face, Latin kept 13 as written and English 8 (measured).</value>
    public ImmutableArray<string> Models { get; init; } = ["lat", "eng"];

    /// <summary>Gets the resolution that Tesseract is told, in pixels per inch.</summary>
    /// <value>Default 300: a line crop has the letter height of a 300 ppi scan of print; unset, Tesseract guesses and warns.</value>
    public int PixelsPerInch { get; init; } = 300;
}
