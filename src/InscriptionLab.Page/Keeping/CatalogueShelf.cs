using System;
using System.IO;
using System.Linq;
using System.Security.Cryptography;
using InscriptionLab.App.Cataloguing;
using InscriptionLab.App.Examining;
using InscriptionLab.Cataloguing;
using InscriptionLab.Outcomes;
using InscriptionLab.Page.Bench;

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
        var ready = piece.Photos.Where(photo => !photo.IsWorking && photo.State is { Photo: not null, Strip: not null, Reading: not null, Finding: not null, Advice: not null }).ToList();
        if (ready.Count < piece.Photos.Length || ready.Count == 0)
        {
            throw new InscriptionLabException("Not every photo of the piece has its finding yet; wait for it, or take photos away that cannot be used.");
        }

        var key = ready[0].State.Photo!.Sha256;
        var added = 0;
        foreach (var photo in ready)
        {
            var state = photo.State;
            var kept = state.Photo! with { File = Copy(photo, state.Photo!.Sha256) };
            var examination = new Examination(kept, state.Tube, state.Strip!, state.Reading!, state.Finding!, state.Advice!, state.Warnings, []) { Ring = state.Ring, Evidence = state.Evidence };
            added += Open.Intake.Add(maker.Of(examination, key, null), by) ? 1 : 0;
        }

        Open.Desk.Describe(key, piece.Name, null, null, by);
        return added;
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
            table.Add(piece, photo.FileName, copy);
        }

        return piece;
    }

    private string Copy(PiecePhoto photo, string sha256)
    {
        if (Open.Address.Kind != StoreKind.Sqlite)
        {
            return photo.Name;
        }

        var folder = Path.Combine(Path.GetFullPath(Open.Address.Name) + "-photos", sha256[..HashDigits]);
        Directory.CreateDirectory(folder);
        var file = Path.Combine(folder, FileNameOf(photo.Name));
        if (!File.Exists(file))
        {
            File.Copy(photo.File, file);
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
