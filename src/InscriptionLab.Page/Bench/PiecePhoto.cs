using System;
using System.Threading;

namespace InscriptionLab.Page.Bench;

/// <summary>One photo of a piece.</summary>
/// <param name="id">Name of the photo in addresses.</param>
/// <param name="name">Name of the file as the user gave it, to be shown and never to be opened.</param>
/// <param name="file">Where it lies on this machine, under a name of ours.</param>
/// <param name="pieceId">The piece it belongs to.</param>
/// <param name="declared">Pixels that its header declares.</param>
/// <param name="clock">Times the stages.</param>
internal sealed class PiecePhoto(string id, string name, string file, string pieceId, long declared, TimeProvider clock)
{
    private int _asked;
    private int _waits;
    private volatile PhotoState _state = PhotoState.Untouched;

    internal string Id { get; } = id;

    internal string Name { get; } = name;

    internal string File { get; } = file;

    internal string PieceId { get; } = pieceId;

    /// <summary>Gets the pixels that it fills, or will fill when it is decoded; none where it cannot be used.</summary>
    internal long Pixels => State switch
    {
        { Photo: { } open } => (long)open.Gray.Width * open.Gray.Height,
        { Problem: null } => declared,
        _ => 0,
    };

    internal PhotoChain Chain { get; } = new(file, name, clock);

    /// <summary>Gets a value indicating whether something still runs or waits to run.</summary>
    internal bool IsWorking => Volatile.Read(ref _asked) > 0;

    /// <summary>Asks for work on the photo.</summary>
    /// <returns>True where it must be queued; false where it waits in the queue already, and what was asked now is done with it.</returns>
    internal bool Ask()
    {
        if (Interlocked.Exchange(ref _waits, 1) == 1)
        {
            return false;
        }

        Interlocked.Increment(ref _asked);
        return true;
    }

    /// <summary>Says that the photo has left the queue; what is asked from now on is queued again.</summary>
    internal void Begun() => Interlocked.Exchange(ref _waits, 0);

    internal void Answered() => Interlocked.Decrement(ref _asked);

    /// <summary>Gets or sets the latest state; a whole new record each time.</summary>
    internal PhotoState State
    {
        get => _state;
        set => _state = value;
    }
}
