using System;
using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using System.Threading.Channels;
using System.Threading.Tasks;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace InscriptionLab.Page.Bench;

/// <summary>Runs the stages, one photo after the other: the stages use every core themselves. A photo that changes while it runs starts again.</summary>
internal sealed partial class BenchWorker(BenchTable table, Workshop workshop, ILogger<BenchWorker> log) : BackgroundService
{
    private readonly Channel<PiecePhoto> _queue = Channel.CreateUnbounded<PiecePhoto>(new UnboundedChannelOptions { SingleReader = true });
    private readonly ConcurrentDictionary<string, CancellationTokenSource> _running = new(StringComparer.Ordinal);

    /// <summary>Asks for a photo to be brought up to date.</summary>
    internal void Ask(PiecePhoto photo)
    {
        Cancel(photo.Id);
        Cancel(photo.PieceId);
        if (photo.Ask())
        {
            _queue.Writer.TryWrite(photo);
        }
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
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await Next(await _queue.Reader.ReadAsync(stoppingToken), stoppingToken);
            }
            catch (OperationCanceledException)
            {
                // The program ends.
            }
        }
    }

    private async Task Next(PiecePhoto photo, CancellationToken stopping)
    {
        photo.Begun();
        if (table.Photo(photo.Id) is not null && table.Piece(photo.PieceId) is { } piece)
        {
            await Task.Run(() => Run(piece, photo, stopping), stopping);

            // Whoever sees the last photo finished also sees that the photos are now read together, or that a set is about to go.
            if ((piece.Photos.Length > 1 || !piece.Together.Sets.IsEmpty) && !piece.Photos.Any(other => other != photo && other.IsWorking))
            {
                piece.Together = piece.Together with { IsWorking = true };
            }

            photo.Answered();
            table.Changed(piece);
            if (!piece.Photos.Any(other => other.IsWorking))
            {
                await Task.Run(() => Join(piece, stopping), stopping);
            }
        }
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
            Tell(photo.State with { Problem = $"{photo.Name}: the program stumbled over this photo. Try a freshly saved copy; the program's own messages say more." });
        }
        finally
        {
            _running.TryRemove(photo.Id, out _);
        }

        void Tell(PhotoState state)
        {
            photo.State = state;
            table.Changed(piece);
        }
    }

    /// <summary>Reads the photos of a piece together.</summary>
    private void Join(Piece piece, CancellationToken stopping)
    {
        using var cancel = CancellationTokenSource.CreateLinkedTokenSource(stopping);
        _running[piece.Id] = cancel;
        try
        {
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
            Tell(new JointState(false, [], "The program stumbled over these photos when it read them together; each by itself is as shown. The program's own messages say more.", null));
        }
        finally
        {
            _running.TryRemove(piece.Id, out _);
        }

        void Tell(JointState state)
        {
            piece.Together = state;
            table.Changed(piece);
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "The joint reading of piece {Piece} stumbled.")]
    private static partial void LogStumbleTogether(ILogger log, string piece, Exception problem);

    [LoggerMessage(Level = LogLevel.Error, Message = "The examination of photo {Photo} stumbled.")]
    private static partial void LogStumble(ILogger log, string photo, Exception problem);
}
