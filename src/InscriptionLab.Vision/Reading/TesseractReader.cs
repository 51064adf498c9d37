using System;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Runtime.InteropServices;
using System.Threading;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.Vision.Native;

namespace InscriptionLab.Vision.Reading;

/// <summary>
/// An independent second reader: the system's Tesseract with its word lists off. It learned print, not engraving, so it is only ever
/// compared with the first reader. Its confidences are not calibrated and it gives no alternatives.
/// </summary>
public sealed class TesseractReader : ILineReader
{
    private static readonly string[] WordLists =
        ["load_system_dawg", "load_freq_dawg", "load_punc_dawg", "load_number_dawg", "load_unambig_dawg", "load_bigram_dawg"];

    private readonly TesseractHandle _engine;
    private readonly TesseractReaderOptions _options;
    private readonly Lock _turn = new();

    private TesseractReader(TesseractHandle engine, TesseractReaderOptions options, string model)
    {
        _engine = engine;
        _options = options;
        Name = $"Tesseract 5 ({model}, no word lists)";
    }

    /// <inheritdoc/>
    public string Name { get; }

    /// <summary>Starts the reader where the system has it.</summary>
    /// <param name="options">Where and how to look; null for the defaults.</param>
    /// <param name="reason">Why there is no second reader; empty where there is one.</param>
    /// <returns>The reader, or null: the program works without it.</returns>
    public static TesseractReader? TryStart(TesseractReaderOptions? options, out string reason)
    {
        options ??= new TesseractReaderOptions();
        if (!NativeLoadOrder.TesseractPresent)
        {
            reason = "No second reader: the Tesseract 5 library is not installed (Debian: apt-get install tesseract-ocr tesseract-ocr-lat).";
            return null;
        }

        // The model file is looked for first: some builds end the process where it is missing.
        var found = (from model in options.Models
                     from folder in options.DataFolders
                     where File.Exists(Path.Combine(folder, model + ".traineddata"))
                     select (Model: model, Folder: folder)).FirstOrDefault();
        if (found.Model is null)
        {
            reason = $"No second reader: none of the Tesseract models {string.Join(", ", options.Models)} is in {string.Join(", ", options.DataFolders)} (Debian: apt-get install tesseract-ocr-lat).";
            return null;
        }

        var engine = TesseractNative.Create();
        string[] names = [.. WordLists, "debug_file"];
        string[] values = [.. WordLists.Select(_ => "0"), "/dev/null"];
        if (TesseractNative.Init(engine, found.Folder, found.Model, TesseractNative.LstmOnly, 0, 0, names, values, (nuint)names.Length, 0) != 0)
        {
            engine.Dispose();
            reason = $"No second reader: Tesseract cannot load {Path.Combine(found.Folder, found.Model + ".traineddata")}; install its package again.";
            return null;
        }

        TesseractNative.SetPageSegmentation(engine, TesseractNative.SingleLine);
        reason = string.Empty;
        return new TesseractReader(engine, options, found.Model);
    }

    /// <inheritdoc/>
    public ImmutableArray<LineReading> Read(ImmutableArray<LetteringLine> lines, CancellationToken cancel)
    {
        var readings = ImmutableArray.CreateBuilder<LineReading>(lines.Length);
        foreach (var line in lines)
        {
            cancel.ThrowIfCancellationRequested();
            var letters = ReadLetters(line);
            var confidence = letters.IsEmpty ? 0 : letters.Min(letter => letter.Probability.Value);
            readings.Add(new LineReading(line, letters, Probability.From(confidence), null));
        }

        return readings.MoveToImmutable();
    }

    /// <inheritdoc/>
    public void Dispose() => _engine.Dispose();

    private ImmutableArray<Letter> ReadLetters(LetteringLine line)
    {
        var crop = line.Crop;
        lock (_turn)
        {
            TesseractNative.SetImage(_engine, crop.Pixels, crop.Width, crop.Height, 1, crop.Width);
            TesseractNative.SetResolution(_engine, _options.PixelsPerInch);
            try
            {
                if (TesseractNative.Recognize(_engine, 0) != 0)
                {
                    return [];
                }

                var iterator = TesseractNative.GetIterator(_engine);
                return iterator == 0 ? [] : Walk(iterator, line);
            }
            finally
            {
                TesseractNative.Clear(_engine);
            }
        }
    }

    private static ImmutableArray<Letter> Walk(IntPtr iterator, LetteringLine line)
    {
        try
        {
            var letters = ImmutableArray.CreateBuilder<Letter>();
            do
            {
                var text = TakeText(iterator);
                if (string.IsNullOrWhiteSpace(text))
                {
                    continue;
                }

                _ = TesseractNative.BoundingBox(iterator, TesseractNative.Symbol, out var left, out var top, out var right, out var bottom);
                var probability = Probability.From(Math.Clamp(TesseractNative.Confidence(iterator, TesseractNative.Symbol) / 100.0, 0, 1));
                if (letters.Count > 0 && TesseractNative.IsAtBeginningOf(iterator, TesseractNative.Word) != 0)
                {
                    letters.Add(Boxed(" ", probability, (int)letters[^1].InCrop.TopRight.X + 1, top, left, bottom, line));
                }

                letters.Add(Boxed(text, probability, left, top, right, bottom, line));
            }
            while (TesseractNative.Next(iterator, TesseractNative.Symbol) != 0);

            return letters.ToImmutable();
        }
        finally
        {
            TesseractNative.DeleteIterator(iterator);
        }
    }

    /// <summary>Tesseract's boxes run from the first pixel to one past the last; here they run along outer pixel corners.</summary>
    private static Letter Boxed(string character, Probability probability, int left, int top, int right, int bottom, LetteringLine line)
    {
        var inCrop = LetterQuads.Rectangle(left - 0.5, top - 0.5, Math.Max(left, right) - 0.5, Math.Max(top, bottom) - 0.5);
        return new Letter(character, probability, [], LetterQuads.ToPhoto(inCrop, line.CropToPhoto), inCrop);
    }

    private static string? TakeText(IntPtr iterator)
    {
        var text = TesseractNative.GetText(iterator, TesseractNative.Symbol);
        try
        {
            return Marshal.PtrToStringUTF8(text);
        }
        finally
        {
            TesseractNative.DeleteText(text);
        }
    }
}
