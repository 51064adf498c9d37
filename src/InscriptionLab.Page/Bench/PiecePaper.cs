using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.App;
using InscriptionLab.App.Records;
using InscriptionLab.App.Reports;
using InscriptionLab.App.Reports.Papers;

namespace InscriptionLab.Page.Bench;

/// <summary>Turns a piece on the bench into what a report shows.</summary>
internal static class PiecePaper
{
    /// <summary>Gives the piece.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="requests">Photos to ask a seller for.</param>
    /// <param name="measured">Gives what was measured in a photo; null where nothing was.</param>
    /// <param name="workshop">Facts of the program.</param>
    internal static PaperObject Of(Piece piece, ImmutableArray<string> requests, Func<PiecePhoto, PaperPhoto?> measured, Workshop workshop) =>
        new(piece.Name, null, null, null, [.. piece.Photos.Where(photo => photo.State.Photo is not null).SelectMany(photo => new[] { Of(photo, piece, workshop), measured(photo) }).OfType<PaperPhoto>()])
        {
            Sets = [.. piece.Together.Sets.Select(set => PaperSetMaker.Of(set.Examination) with
            {
                Lines = [.. set.Lines.Select(Of)],
                Hands = [.. piece.Corrections.Where(correction => correction.PhotoId == set.Place && !set.SetAside.Contains(correction.Id)).Select(Sentence)],
            })],
            Construction = [.. piece.Knowledge.Answers.Select(answer => (answer.Feature.Replace('_', ' '), string.Create(CultureInfo.InvariantCulture, $"{answer.Observation.Replace('_', ' ')} ({answer.Person}, {answer.At:yyyy-MM-dd})")))],
            Requests = requests,
        };

    private static PaperPhoto Of(PiecePhoto shown, Piece piece, Workshop workshop)
    {
        var state = shown.State;
        var photo = state.Photo!;
        return new PaperPhoto
        {
            Name = shown.Name,
            Sha256 = photo.Sha256,
            Width = photo.Gray.Width,
            Height = photo.Gray.Height,
            Pictures = state is { Strip: { } strip, Reading: { } reading } ? PaperPhotoMaker.Pictures(photo, state.Tube, strip, reading) : [],
            Lines = [.. state.Lines.Select(Of)],
            Finding = state.Finding is { } finding ? PaperPhotoMaker.Of(finding) : null,
            Evidence = EvidenceRecordMaker.Of(state.Evidence),
            Advice = state.Advice is { } advice ? RecordMaker.Of(advice) : null,
            Ring = state is { Strip: { } flat, Reading: { } read } ? RecordMaker.RingOf(state.Ring, flat, read) : null,
            Sizes = [.. SizeWords.Of(state.Sizes)],
            Warnings = state.Problem is { } problem ? state.Warnings.Add(problem) : state.Warnings,
            Hands = [.. piece.Corrections.Where(correction => correction.PhotoId == shown.Id && !state.SetAside.Contains(correction.Id)).Select(Sentence)],
            Versions = Versions(workshop),
        };
    }

    /// <summary>A corrected line stands as persons read it, and below it as the program did.</summary>
    private static PaperLine Of(WorkedLine line) => PaperPhotoMaker.Line(
        line.Reading,
        [.. line.Letters.Select(mark => mark?.Person)],
        line.Reading.Text == line.Program.Text ? null : $"The program read: {line.Program.Text}");

    private static string Sentence(Correction correction)
    {
        var what = correction switch
        {
            Correction.TubeEdges => "drew the edges of the tube",
            Correction.RingRim => "drew the rim of the ring",
            Correction.LineBox => "drew the box of a line",
            Correction.LineRemoved => "said that a line is no lettering",
            Correction.LetterRead { Characters: [] } letter => $"said that there is no letter where {letter.Was} stood",
            Correction.LampsStood lamps => $"said where the lamps stood: {string.Join(", ", lamps.Lamps.Select(one => one.Lamp.Text))}",
            Correction.LetterRead letter => $"read {string.Concat(letter.Characters)} where {letter.Was} stood",
            _ => throw new ArgumentOutOfRangeException(nameof(correction), correction, "No words for this correction."),
        };
        return string.Create(CultureInfo.InvariantCulture, $"{correction.Person} {what} ({correction.At:yyyy-MM-dd HH:mm} UTC).");
    }

    private static ImmutableArray<(string Name, string Value)> Versions(Workshop workshop)
    {
        var versions = new List<(string, string)> { ("program", ProgramFacts.NameAndVersion) };
        if (!workshop.Models.IsEmpty)
        {
            versions.Add(("models", string.Join('\n', workshop.Models.Select(model => $"{model.Name}@{model.Sha256}"))));
        }

        versions.Add(("list", $"{workshop.References.Name}\n{workshop.References.Sha256}"));
        return [.. versions];
    }
}
