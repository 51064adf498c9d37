using System;
using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace InscriptionLab.Page.Bench;

/// <summary>Runs the stages, as many photos at a time as there are cores, up to a bound. A photo that changes while it runs starts again.</summary>
internal sealed partial class BenchWorker(BenchTable table, Workshop workshop, ILogger<BenchWorker> log) : BackgroundService
{
    private readonly WorkQueue _queue = new();
    private readonly ConcurrentDictionary<string, CancellationTokenSource> _running = new(StringComparer.Ordinal);

    /// <summary>Asks for a photo to be brought up to date.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="isAwaited">True where a person waits for this very photo, after a correction; it goes before all others.</param>
    internal void Ask(PiecePhoto photo, bool isAwaited = false)
    {
        // A run that goes on is stopped before the new one is asked for; a joint reading after it, so that none goes on that does not know of it.
        Cancel(photo.Id);
        var isNew = photo.Ask();
        Cancel(photo.PieceId);
        if (isNew)
        {
            _queue.Add(photo, isAwaited);
        }
    }

    /// <summary>Says which piece somebody looks at; its photos come first.</summary>
    internal void LookAt(Piece piece) => _queue.LookAt(piece.Id);

    /// <summary>Stops work on a photo that was taken off the bench.</summary>
    internal void Forget(PiecePhoto photo) => Cancel(photo.Id);

    /// <summary>Stops work on a piece that was closed.</summary>
    internal void Forget(Piece piece)
    {
        foreach (var photo in piece.Photos)
        {
            Forget(photo);
        }

        Cancel(piece.Id);
    }

    private void Cancel(string id)
    {
        if (_running.TryGetValue(id, out var running))
        {
            try
            {
                running.Cancel();
            }
            catch (ObjectDisposedException)
            {
                // It ended just now.
            }
        }
    }

    /// <summary>Asks for every photo of a piece to be brought up to date, after something was said of the piece itself.</summary>
    internal void Ask(Piece piece)
    {
        foreach (var photo in piece.Photos)
        {
            Ask(photo);
        }
    }

    /// <summary>Asks for every photo to be brought up to date, after the reference list changed.</summary>
    internal void AskAll()
    {
        foreach (var photo in table.Pieces.SelectMany(piece => piece.Photos))
        {
            Ask(photo);
        }
    }

    /// <inheritdoc/>
    protected override Task ExecuteAsync(CancellationToken stoppingToken) =>
        Task.WhenAll(Enumerable.Range(0, Math.Clamp(Environment.ProcessorCount, 1, table.Limits.PhotosAtOnce)).Select(_ => Task.Run(() => Work(stoppingToken), stoppingToken)));

    private async Task Work(CancellationToken stopping)
    {
        while (!stopping.IsCancellationRequested)
        {
            try
            {
                var photo = await _queue.Take(stopping);
                Piece? finished;
                try
                {
                    finished = Next(photo, stopping);
                }
                finally
                {
                    _queue.Done(photo);
                }

                if (finished is { } piece)
                {
                    lock (piece.Joining)
                    {
                        Join(piece, stopping);
                    }
                }
            }
            catch (OperationCanceledException)
            {
                // The program ends.
            }
        }
    }

    /// <summary>Brings a photo up to date; gives its piece where it was the last one that was worked on.</summary>
    private Piece? Next(PiecePhoto photo, CancellationToken stopping)
    {
        photo.Begun();
        if (table.Photo(photo.Id) is null || table.Piece(photo.PieceId) is not { } piece)
        {
            return null;
        }

        Run(piece, photo, stopping);
        bool isLast;
        lock (piece.Finishing)
        {
            // Whoever sees the last photo finished also sees that the photos are now read together, or that a set is about to go.
            isLast = !piece.Photos.Any(other => other != photo && other.IsWorking);
            if (isLast && (piece.Photos.Length > 1 || !piece.Together.Sets.IsEmpty))
            {
                piece.Together = piece.Together with { IsWorking = true };
            }

            photo.Answered();
        }

        table.Changed(piece);
        return isLast && !photo.IsWorking && table.Piece(piece.Id) is not null ? piece : null;
    }

    private void Run(Piece piece, PiecePhoto photo, CancellationToken stopping)
    {
        using var cancel = CancellationTokenSource.CreateLinkedTokenSource(stopping);
        _running[photo.Id] = cancel;
        try
        {
            ImmutableArray<Correction> corrections = [.. piece.Corrections.Where(correction => correction.PhotoId == photo.Id)];
            photo.Chain.Run(photo.State, corrections, piece.Knowledge, workshop.Stages, Tell, cancel.Token);
        }
        catch (OperationCanceledException)
        {
            // Something newer was asked for, or the program ends.
        }
#pragma warning disable CA1031 // One photo that a stage stumbles over must not stop the work on all others.
        catch (Exception problem)
#pragma warning restore CA1031
        {
            LogStumble(log, photo.Id, problem);
            Tell(photo.State with { Problem = $"{photo.Name}: the program stumbled over this photo. Try a freshly saved copy; the terminal in which the program runs says more." });
        }
        finally
        {
            _running.TryRemove(photo.Id, out _);
        }

        void Tell(PhotoState state)
        {
            var wasSeen = photo.State.CanBeSeen;
            photo.State = state;
            table.Changed(piece);
            if (state.CanBeSeen != wasSeen)
            {
                _queue.Pulse();
            }
        }
    }

    /// <summary>Reads the photos of a piece together.</summary>
    private void Join(Piece piece, CancellationToken stopping)
    {
        using var cancel = CancellationTokenSource.CreateLinkedTokenSource(stopping);
        _running[piece.Id] = cancel;
        try
        {
            if (piece.Photos.Any(photo => photo.IsWorking))
            {
                // It was asked for again in the meantime; the photos are read together after it.
                return;
            }

            piece.Joint.Run(piece, workshop.Stages, Tell, cancel.Token);
        }
        catch (OperationCanceledException)
        {
            // A photo is worked on again; the photos are read together after it.
        }
#pragma warning disable CA1031 // One piece that the joint reading stumbles over must not stop the work on all others.
        catch (Exception problem)
#pragma warning restore CA1031
        {
            LogStumbleTogether(log, piece.Id, problem);
            Tell(new JointState(false, [], "The program stumbled over these photos when it read them together; each by itself is as shown. The terminal in which the program runs says more.", null));
        }
        finally
        {
            _running.TryRemove(piece.Id, out _);
        }

        void Tell(JointState state)
        {
            lock (piece.Finishing)
            {
                // A photo that was asked for in the meantime may have finished since: what is told here would come too late.
                cancel.Token.ThrowIfCancellationRequested();
                piece.Together = state;
            }

            table.Changed(piece);
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "The joint reading of piece {Piece} stumbled.")]
    private static partial void LogStumbleTogether(ILogger log, string piece, Exception problem);

    [LoggerMessage(Level = LogLevel.Error, Message = "The examination of photo {Photo} stumbled.")]
    private static partial void LogStumble(ILogger log, string photo, Exception problem);
}
