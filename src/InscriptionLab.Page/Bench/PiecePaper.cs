using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.App;
using InscriptionLab.App.Reports.Papers;

namespace InscriptionLab.Page.Bench;

/// <summary>Turns a piece on the bench into what a report shows.</summary>
internal static class PiecePaper
{
    internal static PaperObject Of(Piece piece, Workshop workshop) =>
        new(piece.Name, null, null, null, [.. piece.Photos.Where(photo => photo.State.Photo is not null).Select(photo => Of(photo, piece, workshop))]);

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
            Lines = [.. state.Lines.Select(line => PaperPhotoMaker.Line(line.Reading, [.. line.Letters.Select(mark => mark?.Person)], null))],
            Finding = state.Finding is { } finding ? PaperPhotoMaker.Of(finding) : null,
            Warnings = state.Problem is { } problem ? state.Warnings.Add(problem) : state.Warnings,
            Hands = [.. piece.Corrections.Where(correction => correction.PhotoId == shown.Id && !state.SetAside.Contains(correction.Id)).Select(Sentence)],
            Versions = Versions(workshop),
        };
    }

    private static string Sentence(Correction correction)
    {
        var what = correction switch
        {
            Correction.TubeEdges => "drew the edges of the tube",
            Correction.LineBox => "drew the box of a line",
            Correction.LineRemoved => "said that a line is no lettering",
            Correction.LetterRead { Characters: [] } letter => $"said that there is no letter where the program read {letter.Was}",
            Correction.LetterRead letter => $"read {string.Concat(letter.Characters)} where the program read {letter.Was}",
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
