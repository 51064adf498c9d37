using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;
using System.Threading;
using InscriptionLab.Cataloguing;
using InscriptionLab.Files;
using InscriptionLab.Imaging;
using InscriptionLab.Likeness;
using InscriptionLab.Outcomes;
using InscriptionLab.Surveys;
using InscriptionLab.Tables;

namespace InscriptionLab.Exchange;

/// <summary>Builds a data set of lettering from a catalogue: pictures of lines and letters, transcriptions, groups of like marks, three parts without leaks, a datasheet, check sums.</summary>
/// <param name="catalogue">The catalogue.</param>
/// <param name="clock">The clock.</param>
public sealed class DatasetFolder(Catalogue catalogue, TimeProvider clock)
{
    private static readonly string[] MarkColumns = ["mark", "picture", "object", "photo_sha256", "line", "read", "corrected", "corrected_by", "group", "part"];
    private static readonly string[] LetterColumns = ["picture", "mark", "letter", "read", "probability", "part"];

    /// <summary>Builds the data set, whole or not at all.</summary>
    /// <param name="request">What is wanted.</param>
    /// <param name="progress">Told how far it is; null where nobody asks.</param>
    /// <param name="cancel">Stops between objects and lines.</param>
    /// <returns>What it holds.</returns>
    /// <exception cref="InscriptionLabException">The folder is in use, or the catalogue holds no picture of a line.</exception>
    public DatasetResult Write(DatasetRequest request, IProgress<DatasetProgress>? progress, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (WholeFolder.IsInUse(request.Out))
        {
            throw new InscriptionLabException($"{request.Out}: the folder is not empty; name a new one for the data set.");
        }

        var marks = Marks(request, progress, cancel);
        if (marks.Count == 0)
        {
            throw new InscriptionLabException(request.Examinations is null
                ? $"The catalogue {catalogue.Address.Name} holds no picture of a line: examine photos with --catalogue first."
                : "What was chosen holds no picture of a line: choose examinations of lettering.");
        }

        using var whole = new WholeFolder(request.Out);
        var data = Path.Combine(whole.Beside, "data");
        Directory.CreateDirectory(Path.Combine(data, "lines"));
        Directory.CreateDirectory(Path.Combine(data, "letters"));
        progress?.Report(new DatasetProgress(DatasetStep.Grouping, 0, 0));
        var groups = MarkGroups.Of([.. marks.Select(mark => mark.Embedding)], request.Threshold);
        var hashes = catalogue.Search.PerceptualHashes();
        var split = new DatasetSplit(marks.Select(mark => mark.Shown.Key), Ties(marks, hashes), request.Seed);
        cancel.ThrowIfCancellationRequested();
        var letters = WriteTables(data, marks, groups, split, progress, cancel);
        progress?.Report(new DatasetProgress(DatasetStep.Packing, 0, 0));
        File.WriteAllText(Path.Combine(data, "datasheet.md"), Datasheet.Of(marks, groups, split, letters, request, clock.GetUtcNow()), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        BagExport.Pack(whole.Beside, "Engraved lettering of brass instruments", "Lines and letters of engraved lettering, cut from photographs and laid flat, as a program read them and as people corrected them", request.Licence, clock.GetUtcNow());
        cancel.ThrowIfCancellationRequested();
        whole.Finish();
        var parts = DatasetSplit.Names.Select(name => new DatasetPart(
            name,
            marks.Count(mark => split.Of(mark.Shown.Key) == name),
            marks.Select(mark => mark.Shown.Key).Distinct(StringComparer.Ordinal).Count(key => split.Of(key) == name))).ToImmutableArray();
        return new DatasetResult(
            marks.Count,
            letters,
            parts.Sum(part => part.Objects),
            groups.Distinct().Count(),
            marks.Count(mark => mark.Line.Correction is not null),
            parts,
            DatasetWarnings.Of(request, marks, parts, marks.Select(mark => mark.Photo.Sha256).Distinct(StringComparer.Ordinal).Count(photo => !hashes.ContainsKey(photo))));
    }

    private List<DatasetMark> Marks(DatasetRequest request, IProgress<DatasetProgress>? progress, CancellationToken cancel)
    {
        var marks = new List<DatasetMark>();
        var embedder = new MarkEmbedder(new MarkEmbedderOptions());
        var wanted = request.Examinations is { } chosen ? ExchangeSource.KeysOf(catalogue, chosen) : null;
        var (done, total) = (0, wanted?.Count ?? ExchangeSource.Count(catalogue, null));
        foreach (var shown in ExchangeSource.Objects(catalogue, null, wanted))
        {
            cancel.ThrowIfCancellationRequested();
            progress?.Report(new DatasetProgress(DatasetStep.Collecting, done++, total));
            foreach (var photo in shown.Photos.Where(photo => request.Examinations is not { } some || (photo.Reading is { } reading && some.Contains(reading.Number))))
            {
                foreach (var line in (photo.Reading?.Lines ?? []).Where(line => line.Picture.Length > 0))
                {
                    var picture = GrayPng.Read(line.Picture.AsSpan());
                    marks.Add(new DatasetMark(shown, photo, line, picture, embedder.Embed(picture)));
                }
            }
        }

        return marks;
    }

    /// <summary>Ties objects of which two photos look nearly the same.</summary>
    private static IEnumerable<(string One, string Other)> Ties(List<DatasetMark> marks, Dictionary<string, ulong> hashes)
    {
        var photos = marks.Select(mark => (mark.Shown.Key, mark.Photo.Sha256)).Distinct().Where(photo => hashes.ContainsKey(photo.Sha256)).ToList();
        var groups = NearDuplicates.Group([.. photos.Select(photo => hashes[photo.Sha256])], new SurveyOptions().NearDuplicateBits);
        return photos.Select((photo, index) => (photo.Key, photos[groups[index]].Key));
    }

    private static int WriteTables(string data, List<DatasetMark> marks, ImmutableArray<int> groups, DatasetSplit split, IProgress<DatasetProgress>? progress, CancellationToken cancel)
    {
        using var lines = Writer(data, "lines.csv");
        using var letters = Writer(data, "letters.csv");
        CsvTable.WriteRow(lines, MarkColumns);
        CsvTable.WriteRow(letters, LetterColumns);
        var count = 0;
        for (var index = 0; index < marks.Count; index++)
        {
            cancel.ThrowIfCancellationRequested();
            progress?.Report(new DatasetProgress(DatasetStep.Writing, index, marks.Count));
            var mark = marks[index];
            var name = Name(index);
            var part = split.Of(mark.Shown.Key);
            File.WriteAllBytes(Path.Combine(data, "lines", name + ".png"), [.. mark.Line.Picture]);
            CsvTable.WriteRow(lines, [name, $"lines/{name}.png", mark.Shown.Key, mark.Photo.Sha256, Whole(mark.Line.Position + 1), mark.Line.Read, mark.Line.Correction?.Text ?? string.Empty, mark.Line.Correction?.By ?? string.Empty, Name(groups[index]), part]);
            for (var letter = 0; letter < Math.Min(mark.Line.Letters.Length, mark.Line.Boxes.Length); letter++)
            {
                if (Cut(mark.Picture, mark.Line.Boxes[letter]) is { } picture)
                {
                    var file = $"letters/{name}-{Whole(letter + 1)}.png";
                    File.WriteAllBytes(Path.Combine(data, file), GrayPng.Write(picture));
                    CsvTable.WriteRow(letters, [file, name, Whole(letter + 1), mark.Line.Letters[letter].Character, ExchangeText.Number(mark.Line.Letters[letter].Probability), part]);
                    count++;
                }
            }
        }

        return count;
    }

    /// <summary>Cuts a box out of a picture; null where it lies outside.</summary>
    private static GrayImage? Cut(GrayImage picture, ImmutableArray<double> box)
    {
        var (left, top) = ((int)Math.Clamp(Math.Floor(box[0]), 0, picture.Width), (int)Math.Clamp(Math.Floor(box[1]), 0, picture.Height));
        var (right, bottom) = ((int)Math.Clamp(Math.Ceiling(box[2]) + 1, 0, picture.Width), (int)Math.Clamp(Math.Ceiling(box[3]) + 1, 0, picture.Height));
        if (right <= left || bottom <= top)
        {
            return null;
        }

        var pixels = new byte[(right - left) * (bottom - top)];
        for (var row = top; row < bottom; row++)
        {
            picture.Pixels.Slice((row * picture.Width) + left, right - left).CopyTo(pixels.AsSpan((row - top) * (right - left)));
        }

        return new GrayImage(right - left, bottom - top, pixels);
    }

    private static StreamWriter Writer(string folder, string name) => new(Path.Combine(folder, name), append: false, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));

    private static string Name(int index) => string.Create(CultureInfo.InvariantCulture, $"mark-{index + 1:000000}");

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);
}
