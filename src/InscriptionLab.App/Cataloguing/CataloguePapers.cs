using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Threading;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Measuring;
using InscriptionLab.App.Records;
using InscriptionLab.App.Reports;
using InscriptionLab.App.Reports.Papers;
using InscriptionLab.Cataloguing;
using InscriptionLab.Cells;
using InscriptionLab.Exchange;
using InscriptionLab.Files;
using InscriptionLab.Findings;
using InscriptionLab.Gathering;
using InscriptionLab.Likeness;
using InscriptionLab.Outcomes;

namespace InscriptionLab.App.Cataloguing;

/// <summary>
/// Turns objects of a catalogue into what a report shows. The catalogue keeps records and letters, not photos: where a photo's file still
/// lies where it lay and is the same to the byte, its pictures, its ratios and its budgets are worked out again; the record stays what counts.
/// </summary>
/// <param name="composition">The stages.</param>
/// <param name="references">The list with which forms are compared again.</param>
/// <param name="catalogue">The catalogue, for the pictures of joint readings.</param>
internal sealed class CataloguePapers(Composition composition, References.LoadedReferences references, Catalogue catalogue)
{
    private static readonly Readings.LeidenTranscriber Leiden = new(new Readings.LeidenOptions());

    private static readonly string[] Lines = ["lines"];
    private static readonly string[] Compared = [.. Lines, "finding"];

    private readonly Examiner _examiner = composition.Examiner(references.List);
    private readonly Measurer _measurer = composition.Measurer();

    internal PaperObject Of(ExchangeObject shown, CancellationToken cancel) =>
        new(shown.Key, shown.Title, shown.Note, shown.OfferedAs, [.. shown.Photos.SelectMany(photo => Of(photo, cancel))])
        {
            Sets = [.. shown.Photos.Select(photo => photo.Joint).OfType<ExchangeExamination>().Select(Joint)],
            Construction = [.. shown.Observations.Select(seen => (ObservationWords.Plain(seen.Feature), string.Create(CultureInfo.InvariantCulture, $"{ObservationWords.Plain(seen.Answer)} ({seen.By}, {seen.MadeAt:yyyy-MM-dd})")))],
        };

    /// <summary>A joint reading is shown as it was kept: the catalogue does not keep what all of its photos gave one by one.</summary>
    private PaperSet Joint(ExchangeExamination kept)
    {
        var record = JsonLines.SetOf(kept.Record);
        return new PaperSet(PaperSetMaker.TitleOf(record.Set == Words.For(SetKind.Raking) ? SetKind.Raking : SetKind.Turns, record.Files.Length), [.. record.Files.Select(Path.GetFileName).OfType<string>()])
        {
            Pictures = [.. new[] { SetPictures.Strip, SetPictures.Grooves }.Select(name => catalogue.Search.PictureOf(kept.Number, name)).OfType<PictureEntry>().Select(Picture)],
            Lines = [.. kept.Lines.Select(Line)],
            Finding = Finding(kept.Content),
            Evidence = record.Finding?.Evidence,
        };
    }

    private static PaperPicture Picture(PictureEntry kept) => new([.. kept.File], kept.Width, kept.Height, [], null, kept.Name == SetPictures.Strip
        ? "The surface of the tube laid flat, joined from all photos, as it was kept."
        : "Heights over the tube's curve, as they were kept: the darker, the deeper. Depths compare places of this picture; they are no millimetres.");

    private IEnumerable<PaperPhoto> Of(ExchangePhoto photo, CancellationToken cancel)
    {
        var isThere = IsThere(photo);
        if (photo.Reading is { } reading)
        {
            yield return Read(photo, reading, isThere ? Try(() => _examiner.Examine(photo.File, cancel)) : null, isThere);
        }

        if (photo.Measuring is { } measuring)
        {
            yield return Measured(photo, measuring, isThere ? Try(() => _measurer.Measure(photo.File, MeasureRequest.Nothing, cancel)) : null);
        }
    }

    private static PaperPhoto Read(ExchangePhoto photo, ExchangeExamination kept, Examination? again, bool isThere)
    {
        // Where persons read letters, lines are the program's and the finding is not: it takes the letters as they read them.
        var byHand = kept.Lines.Any(line => line.Correction is not null);
        var isSame = again is not null && SameRecord(kept.Record, JsonLines.LineOf(RecordMaker.Of(again)), byHand ? Lines : Compared);
        var fresh = isSame ? PaperPhotoMaker.Of(again!) : null;
        var warnings = kept.Content.Warnings;
        if (again is null)
        {
            warnings = warnings.Add(isThere
                ? "The photo could not be opened again; only what the catalogue keeps is shown."
                : "The photo is no longer where it lay, or was changed: only what the catalogue keeps is shown, without the pictures, the ratios and what the photo leaves open.");
        }
        else if (!isSame)
        {
            warnings = warnings.Add("Another version of the program, its models or the list made the record: the pictures were made anew, the reading and the finding are those of the record; its ratios are not known.");
        }

        var record = JsonLines.PhotoOf(kept.Record);
        return (fresh ?? Bare(photo)) with
        {
            Evidence = record.Finding?.Evidence,
            Advice = record.Advice,
            Ring = record.Ring,
            Pictures = again is null ? [] : PaperPhotoMaker.Pictures(again.Photo, again.Tube, again.Strip, isSame ? again.Reading : new Readings.Reading(string.Empty, [], [])),
            Lines = fresh is null ? [.. kept.Lines.Select(Line)] : [.. fresh.Lines.Select((line, i) => line with { Correction = Correction(kept.Lines[i]) })],
            Finding = byHand ? Finding(kept.Content) : fresh?.Finding ?? Finding(kept.Content),
            Warnings = warnings,
            Versions = Versions(kept),
        };
    }

    private static PaperPhoto Measured(ExchangePhoto photo, ExchangeExamination kept, PhotoMeasurement? again)
    {
        var fresh = again is null ? null : PaperPhotoMaker.Of(again);
        ImmutableArray<string> statements = [.. photo.Measurements.Select(measured => measured.Statement)];
        var isSame = fresh is not null && fresh.Measures.Select(measure => measure.Statement).SequenceEqual(statements);
        return (fresh ?? Bare(photo)) with
        {
            Measures = isSame ? fresh!.Measures : [.. photo.Measurements.Select(measured => new PaperMeasure(RoleOf(measured.Role), measured.Statement, $"scale: {measured.Scale}", []))],
            Pictures = isSame ? fresh!.Pictures : [],
            Warnings = isSame ? kept.Content.Warnings : kept.Content.Warnings.Add("The measurement was not repeated to the same result from the photo alone, for lack of the photo or of what was said about its scale: the result kept is shown, without its budget."),
            Versions = Versions(kept),
        };
    }

    private static PaperPhoto Bare(ExchangePhoto photo) => new() { Name = photo.FileName, Sha256 = photo.Sha256, Width = photo.Width, Height = photo.Height };

    private static PaperLine Line(ExchangeLine line)
    {
        var picture = line.Picture.IsEmpty ? null : GrayPng.Read(line.Picture.AsSpan());
        var letters = ImmutableArray.CreateBuilder<PaperLetter>();
        var words = line.Words;
        var next = 0;
        for (var word = 0; word < words.Length; word++)
        {
            if (word > 0)
            {
                letters.Add(new PaperLetter(" ", 1, string.Empty, null, null));
            }

            foreach (var letter in words[word])
            {
                var cut = picture is not null && next < line.Boxes.Length && line.Boxes[next] is [var left, var top, var right, var bottom] ? PaperCutter.Of(picture, left, top, right, bottom) : null;
                var others = string.Join(", ", letter.Alternatives.Select(other => $"{(other.Character.Length == 0 ? "nothing" : other.Character)} {Figures.Percent(Measures.Probability.From(other.Probability))}"));
                letters.Add(new PaperLetter(letter.Character, letter.Probability, others, cut, null));
                next++;
            }
        }

        ImmutableArray<Readings.Letter> read = [.. letters.Select(letter => new Readings.Letter(letter.Character, Measures.Probability.From(letter.Probability), [], default, default))];
        return new PaperLine(Leiden.Text(read), letters.ToImmutable(), Correction(line));
    }

    private static string? Correction(ExchangeLine line) => line.Correction is { } made
        ? string.Create(CultureInfo.InvariantCulture, $"{made.By} ({made.At:yyyy-MM-dd}) reads: {made.Text}{(made.Reason.Length > 0 ? $" ({made.Reason})" : string.Empty)}")
        : null;

    private static PaperFinding Finding(RecordContent content) => new(
        content.Outcome switch { "agrees" => FindingOutcome.Agrees, "differs" => FindingOutcome.Differs, "undecided" => FindingOutcome.Undecided, _ => FindingOutcome.NothingRead },
        content.Reasons,
        [],
        [],
        [.. content.Nearest.Select(nearest => new PaperForm(nearest.Form, $"{nearest.Maker}, {nearest.Status}", null, [], Differences(nearest.DifferencesJson)))]);

    private static ImmutableArray<string> Differences(string json) =>
        [.. RecordNearest.DifferencesOf(json).Select(difference => DifferenceWords.For(new Comparison.LetterDifference(difference.Attested, difference.Read, Measures.Probability.From(difference.Probability), 0, 0)))];

    private static ImmutableArray<(string Name, string Value)> Versions(ExchangeExamination kept) =>
    [
        ("examined", kept.MadeAt.ToString("yyyy-MM-dd HH:mm 'UTC'", CultureInfo.InvariantCulture)),
        ("program", kept.Versions.Program),
        ("models", kept.Versions.Model.Replace(' ', '\n')),
        .. kept.Versions.List.Length == 0 ? ImmutableArray<(string, string)>.Empty : [("list", $"{kept.Versions.List}\n{kept.Versions.ListSha256}")],
        ("record", kept.Uid),
    ];

    /// <summary>Compares reading and finding of two records; the file's name may be written otherwise.</summary>
    private static bool SameRecord(string kept, string again, string[] compared)
    {
        using var first = JsonDocument.Parse(kept);
        using var second = JsonDocument.Parse(again);
        return compared.All(name => first.RootElement.TryGetProperty(name, out var a) && second.RootElement.TryGetProperty(name, out var b) && JsonElement.DeepEquals(a, b));
    }

    private static bool IsThere(ExchangePhoto photo) => File.Exists(photo.File) && string.Equals(FileHash.Of(photo.File), photo.Sha256, StringComparison.Ordinal);

    private static T? Try<T>(Func<T> make)
        where T : class
    {
        try
        {
            return make();
        }
        catch (InscriptionLabException)
        {
            // The report says of the photo that it could not be opened.
            return null;
        }
    }

    private static string RoleOf(string role) => role switch { "outer" => "rim", "clear" => "aperture", _ => role };
}
