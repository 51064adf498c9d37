using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Advice;
using InscriptionLab.App.Reports;
using InscriptionLab.Gathering;
using InscriptionLab.Measures;
using InscriptionLab.Page.Bench;
using InscriptionLab.Readings;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;

namespace InscriptionLab.Page.Answers;

/// <summary>Turns what is on the bench into what the page shows; rounds, and changes nothing else.</summary>
internal static class AnswerMaker
{
    /// <summary>Digits after the point of pixel coordinates.</summary>
    private const int PixelDigits = 2;

    /// <summary>Points of the grid along the longer side of the strip: between them the way to the photo is all but straight.</summary>
    private const int GridPoints = 25;

    private static readonly LeidenTranscriber Leiden = new(new LeidenOptions());

    internal static PieceAnswer Of(Piece piece) => new(
        piece.Id,
        piece.Name,
        piece.Version,
        [.. piece.Photos.Select(Of)],
        [.. piece.Corrections.Select(correction => Of(correction, piece))],
        piece.CanRedo,
        Asks(piece))
    {
        Together = SetMaker.Of(piece),
        Seen = [.. piece.Knowledge.Answers.Select(answer => new SeenAnswer(answer.Feature, answer.Observation, answer.Person, answer.At))],
    };

    internal static PhotoAnswer Of(PiecePhoto photo)
    {
        var state = photo.State;
        return new PhotoAnswer(
            photo.Id,
            photo.Name,
            photo.IsWorking,
            [.. state.Stages.Select(stage => new StageAnswer(stage.Stage, WordOf(stage.Status), stage.Elapsed?.TotalSeconds))],
            state.Problem,
            state.Photo is { } read ? [read.Gray.Width, read.Gray.Height] : null,
            state.Tiles?.Levels ?? 0,
            state.Photo is { } facts ? new FactsAnswer(facts.Sha256, facts.Quality.Sharpness, facts.Quality.BurntFraction, facts.Quality.BlackFraction, facts.Lens.FocalLength?.Pixels) : null,
            state.Tube is { } tube ? Of(tube, state.TubeBy) : null,
            state.Strip is { } strip ? Of(strip, state.StripKey) : null,
            state.Reading?.Reader ?? string.Empty,
            [.. (state.Reading?.Style ?? []).Select(style => new ChanceAnswer(style.Style, style.Probability.Value))],
            [.. state.Lines.Select(line => Of(line, state.Strip))],
            state.Finding is { } finding ? FindingMaker.Of(finding, state.Evidence) : null,
            state.Advice is { } advice ? AdviceAnswer.Of(advice) : null,
            CommandWords.Without(state.Warnings))
        {
            Ring = state.Ring is { } ring ? new RingAnswer(Of(ring.Outer), Of(ring.Inner), ring.Plane.InnerRadius, Of(state.RingBy)) : null,
            Sizes = CommandWords.Without(SizeWords.Of(state.Sizes)),
        };
    }

    /// <summary>The photos to ask a seller for, once all photos of the piece are judged.</summary>
    internal static ImmutableArray<string> Asks(Piece piece)
    {
        var advice = piece.Photos.Select(photo => photo.State.Advice).OfType<PhotoAdvice>().ToImmutableArray();
        bool Have(SetKind kind) => piece.Together.Sets.Any(set => set.Examination.Kind == kind);
        return advice.Length == piece.Photos.Length ? PhotoRequests.Of(advice, differentLamps: Have(SetKind.Raking), turned: Have(SetKind.Turns)) : [];
    }

    internal static string CropKey(WorkedLine worked) => worked.Basis.Replace('/', '-') + "-" + worked.Id;

    private static TubeAnswer Of(Tube tube, HandMark? by) => new(
        Of(tube.Axis),
        [.. tube.Silhouettes.Select(Of)],
        Math.Round(tube.Diameter.Pixels, PixelDigits),
        tube.Confidence.Value,
        Of(by));

    private static StripAnswer Of(Strip strip, string key)
    {
        var (width, height) = (strip.Image.Width, strip.Image.Height);
        var columns = width >= height ? GridPoints : Math.Max(2, GridPoints * width / height);
        var rows = width >= height ? Math.Max(2, GridPoints * height / width) : GridPoints;
        var grid = ImmutableArray.CreateBuilder<double>(columns * rows * 2);
        for (var i = 0; i < columns * rows; i++)
        {
            var at = strip.Map.ToPhoto(new PixelPoint((width - 1) * (i % columns) / (columns - 1.0), (height - 1) * (i / columns) / (rows - 1.0)));
            grid.Add(Math.Round(at.X, PixelDigits));
            grid.Add(Math.Round(at.Y, PixelDigits));
        }

        return new StripAnswer(key, [width, height], strip.Unrolled, grid.MoveToImmutable(), [columns, rows]);
    }

    internal static LineAnswer Of(WorkedLine worked, Strip? strip)
    {
        var line = worked.Reading.Line;
        return new LineAnswer(
            worked.Id,
            worked.Basis,
            worked.Reading.Text,
            Leiden.Text(worked.Reading.Letters),
            worked.Reading.Confidence.Value,
            line.Lettering.Value,
            line.Direction.Angle.Degrees,
            line.Direction.UpsideDown,
            line.Direction.Mirrored,
            Math.Round(line.InkHeight.Pixels, PixelDigits),
            strip is not null && OnStrip(line.InPhoto, strip) is { } box ? Of(box) : null,
            Of(line.InPhoto),
            [line.Crop.Width, line.Crop.Height],
            CropKey(worked),
            [.. worked.Reading.Letters.Select((letter, i) => Of(letter, worked.Ids[i], worked.Letters[i], strip))],
            worked.Reading.Second is { } second ? new SecondAnswer(second.Reader, second.Text, second.Agrees) : null,
            Of(worked.Box))
        {
            Program = worked.HasHandLetters || worked.Reading.Text != worked.Program.Text ? worked.Program.Text : null,
        };
    }

    /// <summary>Where a box of the photo lies in the strip; lines that were read from the photo as it is have no other.</summary>
    private static Quad? OnStrip(Quad box, Strip strip) =>
        strip.Map.ToStrip(box.TopLeft) is { } topLeft
        && strip.Map.ToStrip(box.TopRight) is { } topRight
        && strip.Map.ToStrip(box.BottomRight) is { } bottomRight
        && strip.Map.ToStrip(box.BottomLeft) is { } bottomLeft
            ? new Quad(topLeft, topRight, bottomRight, bottomLeft)
            : null;

    private static LetterAnswer Of(Letter letter, int id, HandMark? mark, Strip? strip)
    {
        var placed = letter.InPhoto != default;
        return new LetterAnswer(
            id,
            letter.Character,
            letter.Probability.Value,
            [.. letter.Alternatives.Select(other => new ChanceAnswer(other.Character, other.Probability.Value))],
            placed ? Of(letter.InPhoto) : null,
            placed && strip is not null && OnStrip(letter.InPhoto, strip) is { } box ? Of(box) : null,
            letter.InCrop == default ? null : Bounds(letter.InCrop),
            Of(mark));
    }

    private static CorrectionAnswer Of(Correction correction, Piece piece)
    {
        var (kind, was, becomes) = correction switch
        {
            Correction.TubeEdges => ("tube", string.Empty, string.Empty),
            Correction.RingRim => ("ring", string.Empty, string.Empty),
            Correction.LampsStood stated => ("lamps", string.Empty, string.Join(", ", stated.Lamps.Select(one => one.Lamp.Text))),
            Correction.Seen seen => ("seen", seen.Feature, seen.Observation),
            Correction.LineBox box => ("line", box.LineId, string.Empty),
            Correction.LineRemoved removed => ("line-removed", removed.LineId, string.Empty),
            Correction.LetterRead letter => ("letter", letter.Was, string.Concat(letter.Characters)),
            _ => throw new ArgumentOutOfRangeException(nameof(correction), correction, "No word for this correction."),
        };
        var aside = piece.Photos.FirstOrDefault(photo => photo.Id == correction.PhotoId)?.State.SetAside.Contains(correction.Id)
            ?? piece.Together.Sets.FirstOrDefault(set => set.Place == correction.PhotoId)?.SetAside.Contains(correction.Id)
            ?? (correction is Correction.LetterRead && !piece.Together.IsWorking);
        return new CorrectionAnswer(correction.Id, correction.PhotoId, kind, correction.Person, correction.At, was, becomes, aside);
    }

    private static HandAnswer? Of(HandMark? mark) => mark is null ? null : new HandAnswer(mark.Person, mark.At, mark.Was);

    private static double[] Of(PixelPoint point) => [Math.Round(point.X, PixelDigits), Math.Round(point.Y, PixelDigits)];

    private static ImmutableArray<double> Of(PixelEllipse ellipse) =>
        [.. Of(ellipse.Centre), Math.Round(ellipse.SemiMajor.Pixels, PixelDigits), Math.Round(ellipse.SemiMinor.Pixels, PixelDigits), Math.Round(ellipse.Rotation.Degrees, PixelDigits)];

    private static ImmutableArray<double[]> Of(PixelSegment segment) => [Of(segment.Start), Of(segment.End)];

    private static ImmutableArray<double[]> Of(Quad quad) => [Of(quad.TopLeft), Of(quad.TopRight), Of(quad.BottomRight), Of(quad.BottomLeft)];

    private static ImmutableArray<double> Bounds(Quad quad)
    {
        IEnumerable<PixelPoint> corners = [quad.TopLeft, quad.TopRight, quad.BottomRight, quad.BottomLeft];
        return
        [
            Math.Round(corners.Min(corner => corner.X), PixelDigits),
            Math.Round(corners.Min(corner => corner.Y), PixelDigits),
            Math.Round(corners.Max(corner => corner.X), PixelDigits),
            Math.Round(corners.Max(corner => corner.Y), PixelDigits),
        ];
    }

    private static string WordOf(StageStatus status) => status switch
    {
        StageStatus.Waiting => "waiting",
        StageStatus.Running => "running",
        StageStatus.Done => "done",
        StageStatus.Declined => "declined",
        StageStatus.ByHand => "by-hand",
        StageStatus.Failed => "failed",
        _ => throw new ArgumentOutOfRangeException(nameof(status), status, "No word for this status."),
    };
}
