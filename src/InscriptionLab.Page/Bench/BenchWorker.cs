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
        if (_running.TryGetValue(photo.Id, out var running))
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

        photo.Asked();
        _queue.Writer.TryWrite(photo);
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
        if (table.Photo(photo.Id) is not null && table.Piece(photo.PieceId) is { } piece)
        {
            await Task.Run(() => Run(piece, photo, stopping), stopping);
            photo.Answered();
            table.Changed(piece);
        }
    }

    private void Run(Piece piece, PiecePhoto photo, CancellationToken stopping)
    {
        using var cancel = CancellationTokenSource.CreateLinkedTokenSource(stopping);
        _running[photo.Id] = cancel;
        try
        {
            ImmutableArray<Correction> corrections = [.. piece.Corrections.Where(correction => correction.PhotoId == photo.Id)];
            photo.Chain.Run(photo.State, corrections, workshop.Stages, Tell, cancel.Token);
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

    [LoggerMessage(Level = LogLevel.Error, Message = "The examination of photo {Photo} stumbled.")]
    private static partial void LogStumble(ILogger log, string photo, Exception problem);
}
