using System;
using System.Collections.Concurrent;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Security.Cryptography;
using System.Threading;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Page.Bench;

/// <summary>All pieces that are open, and the folder in which their photos lie until they are closed.</summary>
internal sealed class BenchTable(BenchLimits limits, TimeProvider clock) : IDisposable
{
    /// <summary>Random bytes in the name of a piece or photo: names cannot be guessed.</summary>
    private const int NameBytes = 9;

    private readonly ConcurrentDictionary<string, Piece> _pieces = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, PiecePhoto> _photos = new(StringComparer.Ordinal);
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("inscriptionlab-");
    private readonly Lock _adding = new();
    private int _order;
    private readonly ConcurrentDictionary<string, int> _orders = new(StringComparer.Ordinal);

    internal BenchLimits Limits { get; } = limits;

    internal Announcer Announcer { get; } = new();

    /// <summary>Gets the pieces, the latest first.</summary>
    internal IEnumerable<Piece> Pieces => _pieces.Values.OrderByDescending(piece => _orders.GetValueOrDefault(piece.Id));

    public void Dispose()
    {
        try
        {
            _folder.Delete(recursive: true);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // The system's own cleaning of its temporary folder takes what could not be deleted.
        }
    }

    internal Piece? Piece(string id) => _pieces.GetValueOrDefault(id);

    internal PiecePhoto? Photo(string id) => _photos.GetValueOrDefault(id);

    /// <summary>Opens a piece.</summary>
    /// <exception cref="InscriptionLabException">The bench is full.</exception>
    internal Piece Open(string? name)
    {
        if (_pieces.Count >= Limits.Pieces)
        {
            throw new InscriptionLabException($"{Limits.Pieces} pieces are open; close one that is finished and try again.");
        }

        var order = Interlocked.Increment(ref _order);
        var piece = new Piece(NewName(), ShownName.Of(name, string.Create(CultureInfo.InvariantCulture, $"Piece {order}"), Limits.NameLength));
        _orders[piece.Id] = order;
        _pieces[piece.Id] = piece;
        Announcer.Say(new Announcement("bench", string.Empty, 0));
        return piece;
    }

    /// <summary>Checks that a piece may have one more photo. Photos that wait count with what their headers declare.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="pixels">Pixels of the photo; none where they are not known yet.</param>
    /// <exception cref="InscriptionLabException">It may not.</exception>
    internal void CheckRoom(Piece piece, long pixels = 0)
    {
        if (piece.Photos.Length >= Limits.PhotosOfPiece)
        {
            throw new InscriptionLabException($"A piece can have {Limits.PhotosOfPiece} photos at most; open another piece.");
        }

        if (_photos.Values.Sum(photo => photo.Pixels) + pixels > Limits.Pixels)
        {
            throw new InscriptionLabException("The photos on the bench fill the memory set aside for them; close a piece that is finished and try again.");
        }
    }

    /// <summary>Gives a new file on this machine for a photo that comes in; its name owes nothing to the photo's own.</summary>
    internal string NewFile() => Path.Combine(_folder.FullName, NewName());

    /// <summary>Adds a photo whose file is there; where there is no room for it, its file goes.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="name">The photo's name as it was given.</param>
    /// <param name="file">The file, from <see cref="NewFile"/>.</param>
    /// <param name="pixels">Pixels that its header declares.</param>
    /// <exception cref="InscriptionLabException">There is no room.</exception>
    internal PiecePhoto Add(Piece piece, string? name, string file, long pixels)
    {
        var photo = new PiecePhoto(NewName(), ShownName.Of(name, "photo", Limits.NameLength), file, piece.Id, pixels, clock);
        try
        {
            // One at a time, so that photos that come in at once see each other.
            lock (_adding)
            {
                CheckRoom(piece, pixels);
                _photos[photo.Id] = photo;
                piece.Add(photo);
            }
        }
        catch (InscriptionLabException)
        {
            Delete(file);
            throw;
        }

        return photo;
    }

    internal void Remove(Piece piece, PiecePhoto photo)
    {
        if (piece.Remove(photo) && _photos.TryRemove(photo.Id, out _))
        {
            Delete(photo.File);
            Changed(piece);
        }
    }

    internal void Close(Piece piece)
    {
        if (!_pieces.TryRemove(piece.Id, out _))
        {
            return;
        }

        foreach (var photo in piece.Photos)
        {
            _photos.TryRemove(photo.Id, out _);
            Delete(photo.File);
        }

        Announcer.Say(new Announcement("bench", string.Empty, 0));
    }

    internal void Changed(Piece piece)
    {
        piece.Touch();
        Announcer.Say(new Announcement("piece", piece.Id, piece.Version));
    }

    private static void Delete(string file)
    {
        try
        {
            File.Delete(file);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // The folder goes as a whole when the program ends.
        }
    }

    private static string NewName() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(NameBytes));
}
