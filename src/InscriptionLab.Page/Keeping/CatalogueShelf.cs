using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Security.Cryptography;
using InscriptionLab.App.Cataloguing;
using InscriptionLab.App.Examining;
using InscriptionLab.Cataloguing;
using InscriptionLab.Evidence;
using InscriptionLab.Files;
using InscriptionLab.Outcomes;
using InscriptionLab.Page.Bench;
using InscriptionLab.Readings;

namespace InscriptionLab.Page.Keeping;

/// <summary>The catalogue that the page was started with, if any, and the folder beside it in which photos of the bench are kept.</summary>
/// <param name="catalogue">The catalogue; null where the page has none.</param>
/// <param name="workshop">Stages, list and clock.</param>
internal sealed class CatalogueShelf(Catalogue? catalogue, Workshop workshop)
{
    /// <summary>Digits of a photo's hash in the name of its folder.</summary>
    private const int HashDigits = 16;

    internal bool IsThere => catalogue is not null;

    /// <summary>Gets the catalogue's name; null where the page has none.</summary>
    internal string? Name => catalogue?.Address.Name;

    /// <summary>Gets the catalogue.</summary>
    /// <exception cref="InscriptionLabException">The page was started without one.</exception>
    internal Catalogue Open => catalogue ?? throw new InscriptionLabException("The page was started without a catalogue; start it with ./lab serve --catalogue FILE.");

    /// <summary>Keeps a piece: a copy of every photo beside the catalogue, and what was found.</summary>
    /// <returns>How many photos were added.</returns>
    internal int Keep(Piece piece, string by)
    {
        var maker = new EntryMaker(workshop.Models, workshop.References, workshop.Clock);
        var ready = piece.Photos.Where(photo => !photo.IsWorking && photo.State.ToExamination() is not null).ToList();
        if (ready.Count < piece.Photos.Length || ready.Count == 0 || piece.Together.IsWorking)
        {
            throw new InscriptionLabException("Not every photo of the piece has its finding yet; wait for it, or take photos away that cannot be used.");
        }

        // A photo that the catalogue has hangs on an object already, whatever that is called.
        var key = ready.Select(photo => Open.Search.KeyOfPhoto(photo.State.Photo!.Sha256)).OfType<string>().FirstOrDefault() ?? ready[0].State.Photo!.Sha256;
        var added = 0;
        var files = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var photo in ready)
        {
            var examination = photo.State.ToExamination()!;
            files[examination.Photo.Sha256] = Copy(photo, examination.Photo.Sha256);
            var inFile = InFile(examination, files);
            added += Add(photo.State.Lines, lines => maker.Of(inFile with { Reading = inFile.Reading with { Lines = lines } }, key, null), by) ? 1 : 0;
        }

        foreach (var set in piece.Together.Sets)
        {
            var inFiles = set.Examination with { Members = [.. set.Examination.Members.Select(member => InFile(member, files))] };
            Add(set.Lines, lines => maker.Of(inFiles with { Reading = inFiles.Reading with { Lines = lines } }, key), by);
        }

        Open.Desk.Describe(key, piece.Name, null, null, by);
        ImmutableArray<ObservationEntry> seen = [.. piece.Knowledge.Answers.Where(answer => answer.Feature != PieceKnowledge.Odds).Select(answer => ObservationMaker.Of(ConstructionTable.Default, answer.Feature, answer.Observation, answer.Person, answer.At))];
        Open.Desk.Observe(key, seen, piece.OpenedQuestions, by);
        piece.KeptQuestions = [.. seen.Select(one => one.Feature)];
        return added;
    }

    /// <summary>Keeps the reading as the program made it, and lays over its lines what persons read; the finding is the one over what persons read.</summary>
    private bool Add(ImmutableArray<WorkedLine> lines, Func<ImmutableArray<LineReading>, CatalogueEntry> entryOf, string by)
    {
        var read = lines.Select((line, position) => (line, position)).Where(item => item.line.HasHandLetters).ToList();
        var entry = entryOf([.. lines.Select(line => line.Program)]) with
        {
            Hands = string.Join('\n', read.Select(item => string.Create(CultureInfo.InvariantCulture, $"{item.position} {item.line.Reading.Text}"))),
        };
        if (!Open.Intake.Add(entry, by))
        {
            return false;
        }

        foreach (var (line, position) in read)
        {
            var people = string.Join(", ", line.Letters.OfType<HandMark>().Select(mark => mark.Person).Distinct(StringComparer.Ordinal));
            Open.Desk.Correct(Open.Intake.NumberOf(entry)!.Value, position, line.Reading.Text, people, "Letter by letter, before it was kept.");
        }

        return true;
    }

    /// <summary>Lays the photos of an object on the bench again.</summary>
    /// <exception cref="InscriptionLabException">None of them is there any more.</exception>
    internal Piece LayOut(string key, BenchTable table)
    {
        var shown = Exchange.ExchangeSource.Objects(Open, key).Single();
        var there = shown.Photos.Where(photo => File.Exists(photo.File) && Hash(photo.File) == photo.Sha256).ToList();
        if (there.Count == 0)
        {
            throw new InscriptionLabException("None of this object's photos lies where it lay when it was examined, unchanged; lay the photos on the bench by hand.");
        }

        var piece = table.Open(shown.Title ?? there[0].FileName);
        foreach (var photo in there)
        {
            table.CheckRoom(piece);
            var copy = table.NewFile();
            File.Copy(photo.File, copy);
            table.Add(piece, photo.FileName, copy, workshop.Stages.Declared(copy));
        }

        Restore(piece, shown.Observations);

        return piece;
    }

    /// <summary>Gives a piece the answers that the catalogue keeps, each still its person's; those that today's checklist does not know stay in the catalogue alone.</summary>
    private static void Restore(Piece piece, ImmutableArray<ObservationEntry> kept)
    {
        foreach (var answer in kept)
        {
            Correction.Seen Made(int id) => new(new CorrectionOrigin(id, string.Empty, answer.By, answer.MadeAt, string.Empty), answer.Feature, answer.Answer);
            if (PieceKnowledge.IsUnderstood(Made(1)))
            {
                piece.Correct(Made);
                piece.KeptQuestions = piece.KeptQuestions.Add(answer.Feature);
            }
        }
    }

    private static Examination InFile(Examination examination, Dictionary<string, string> files) =>
        examination with { Photo = examination.Photo with { File = files[examination.Photo.Sha256] } };

    private string Copy(PiecePhoto photo, string sha256)
    {
        if (Open.Address.Kind != StoreKind.Sqlite)
        {
            return photo.Name;
        }

        var folder = Path.Combine(Path.GetFullPath(Open.Address.Name) + "-photos", sha256[..HashDigits]);
        var file = Path.Combine(folder, FileNameOf(photo.Name));
        try
        {
            Directory.CreateDirectory(folder);
            if (!File.Exists(file) || Hash(file) != sha256)
            {
                WholeFile.Copy(photo.File, file);
            }
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new InscriptionLabException($"{file}: the photo cannot be kept there; look whether the disk is full and whether you may write there, and keep the piece again.", problem);
        }

        return file;
    }

    /// <summary>A name from outside becomes the name of a file only after everything but letters, digits, dot, dash and underscore is gone.</summary>
    private static string FileNameOf(string name)
    {
        var safe = string.Concat(name.Where(letter => char.IsAsciiLetterOrDigit(letter) || letter is '.' or '-' or '_')).TrimStart('.');
        return safe.Length == 0 ? "photo" : safe[^Math.Min(safe.Length, 80)..];
    }

    private static string Hash(string file)
    {
        using var stream = File.OpenRead(file);
        return Convert.ToHexStringLower(SHA256.HashData(stream));
    }
}
