using System;
using System.Collections.Concurrent;
using System.Collections.Generic;
using System.Data.Common;
using System.IO;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.Cataloguing;
using InscriptionLab.Files;
using InscriptionLab.Outcomes;
using Microsoft.EntityFrameworkCore;
using RabbitMQ.Client;
using RabbitMQ.Client.Events;

namespace InscriptionLab.Surveys.Queue;

/// <summary>
/// Takes photos from the broker, examines them and keeps them. A photo is acknowledged only after the database has committed it, so a worker
/// that dies loses nothing; the catalogue keeps the same work once, so a photo that is handed out again is not doubled. A photo that cannot be
/// used is put aside with its reason. While broker or database are away, the worker waits.
/// </summary>
/// <param name="broker">Address of the broker.</param>
/// <param name="options">How the queue is used.</param>
/// <param name="catalogue">The catalogue to fill.</param>
/// <param name="versions">What examines here.</param>
/// <param name="newExaminer">Makes one examiner; there is one for each photo that is examined at a time.</param>
/// <param name="clock">The clock.</param>
public sealed class QueueWorker(string broker, QueueOptions options, Catalogue catalogue, EntryVersions versions, Func<IPhotoExaminer> newExaminer, TimeProvider clock)
{
    private const string By = "survey";
    private readonly ConcurrentBag<IPhotoExaminer> _examiners = [];
    private int _busy;
    private int _kept;
    private long _lastWork;

    /// <summary>Gets how many photos this worker kept.</summary>
    public int Kept => Volatile.Read(ref _kept);

    /// <summary>Works.</summary>
    /// <param name="atATime">How many photos are examined at a time; as many are asked of the broker ahead.</param>
    /// <param name="untilEmpty">True to end when the queue stays empty; false to wait for more.</param>
    /// <param name="say">Told when something is waited for.</param>
    /// <param name="cancel">Ends the work; photos in hand go back to the broker.</param>
    /// <exception cref="InscriptionLabException">The address cannot be used.</exception>
    public async Task RunAsync(int atATime, bool untilEmpty, Action<string> say, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(say);
        var address = PhotoQueue.Address(broker);
        try
        {
            while (true)
            {
                try
                {
                    await SessionAsync(address, (ushort)atATime, untilEmpty, say, cancel).ConfigureAwait(false);
                    return;
                }
                catch (Exception problem) when (PhotoQueue.IsBreak(problem) && !cancel.IsCancellationRequested)
                {
                    say(PhotoQueue.Away(address));
                    await Task.Delay(options.Wait, cancel).ConfigureAwait(false);
                }
            }
        }
        finally
        {
            foreach (var examiner in _examiners)
            {
                examiner.Dispose();
            }
        }
    }

    private async Task SessionAsync(Uri address, ushort atATime, bool untilEmpty, Action<string> say, CancellationToken cancel)
    {
        await using var connection = await PhotoQueue.ConnectAsync(address, cancel).ConfigureAwait(false);
        var channelOptions = new CreateChannelOptions(publisherConfirmationsEnabled: true, publisherConfirmationTrackingEnabled: true, consumerDispatchConcurrency: atATime);
        await using var channel = await connection.CreateChannelAsync(channelOptions, cancel).ConfigureAwait(false);
        await PhotoQueue.DeclareAsync(channel, options, cancel).ConfigureAwait(false);
        await channel.BasicQosAsync(0, atATime, global: false, cancel).ConfigureAwait(false);
        var consumer = new AsyncEventingBasicConsumer(channel);
#pragma warning disable CA2025 // The channel stays open until the session ends; a delivery that is in hand then finds it closed, and the broker hands the photo out again.
        consumer.ReceivedAsync += (_, delivery) => ReceiveAsync(channel, delivery, say, cancel);
#pragma warning restore CA2025
        await channel.BasicConsumeAsync(options.Photos, autoAck: false, consumer, cancel).ConfigureAwait(false);
        _lastWork = clock.GetTimestamp();
        while (channel.IsOpen)
        {
            await Task.Delay(options.Wait / 2, cancel).ConfigureAwait(false);
            if (untilEmpty && Volatile.Read(ref _busy) == 0 && clock.GetElapsedTime(Volatile.Read(ref _lastWork)) >= options.Quiet
                && await channel.MessageCountAsync(options.Photos, cancel).ConfigureAwait(false) == 0)
            {
                return;
            }
        }

        throw new IOException("The broker closed the connection.");
    }

    private async Task ReceiveAsync(IChannel channel, BasicDeliverEventArgs delivery, Action<string> say, CancellationToken cancel)
    {
        Interlocked.Increment(ref _busy);
        try
        {
            var bytes = delivery.Body.ToArray();
            var reason = await Task.Run(() => WorkAsync(bytes, delivery.Redelivered, say, cancel), cancel).ConfigureAwait(false);
            if (reason is not null)
            {
                await PutAsideAsync(channel, bytes, reason, cancel).ConfigureAwait(false);
                await NoteAsync(bytes, reason, say, cancel).ConfigureAwait(false);
            }

            await channel.BasicAckAsync(delivery.DeliveryTag, multiple: false, cancel).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            // Not acknowledged: the broker hands the photo to another worker.
        }
        catch (Exception problem) when (PhotoQueue.IsBreak(problem))
        {
            // The acknowledgement did not reach the broker: the photo comes again and is found in the catalogue.
        }
        finally
        {
            Volatile.Write(ref _lastWork, clock.GetTimestamp());
            Interlocked.Decrement(ref _busy);
        }
    }

    /// <summary>Does one photo.</summary>
    /// <returns>Why it is to be put aside; null where it is kept.</returns>
    private async Task<string?> WorkAsync(byte[] bytes, bool redelivered, Action<string> say, CancellationToken cancel)
    {
        if (PhotoJob.From(bytes) is not { } job)
        {
            return "The message is none that this program sends.";
        }

        if (await WithDatabaseAsync(() => catalogue.Intake.Has(job.Sha256, versions), say, cancel).ConfigureAwait(false) is { Value: true })
        {
            return null;
        }

        if (redelivered && await WithDatabaseAsync(() => catalogue.Intake.Refused(job.Sha256), say, cancel).ConfigureAwait(false) is { Value: true })
        {
            // Put aside already; only the acknowledgement was lost.
            return null;
        }

        var (entry, reason) = Examine(job, cancel);
        if (entry is null)
        {
            return reason;
        }

        var kept = await WithDatabaseAsync(() => catalogue.Intake.Add(entry, By), say, cancel).ConfigureAwait(false);
        if (kept.Value == true)
        {
            Interlocked.Increment(ref _kept);
        }

        return kept.Reason;
    }

    private (CatalogueEntry? Entry, string? Reason) Examine(PhotoJob job, CancellationToken cancel)
    {
#pragma warning disable CA2000 // Examiners go back into the bag, which is emptied when the worker ends.
        var examiner = _examiners.TryTake(out var free) ? free : newExaminer();
#pragma warning restore CA2000
        try
        {
            if (!File.Exists(job.File) || FileHash.Of(job.File) != job.Sha256)
            {
                return (null, $"{job.File}: the file is not there, or was changed since it was listed; list the folder again.");
            }

            var entry = examiner.Examine(new SurveyFile(job.File, job.ObjectKey, job.OfferedAs, job.Bytes, job.ChangedAt), cancel).Entry;
            return (entry, entry is null ? "The examiner keeps nothing." : null);
        }
        catch (InscriptionLabException problem)
        {
            return (null, problem.Message);
        }
#pragma warning disable CA1031 // One photo among millions must not end the worker; it is put aside with the kind of fault.
        catch (Exception problem) when (problem is not (OperationCanceledException or OutOfMemoryException))
#pragma warning restore CA1031
        {
            return (null, $"{job.File}: the program failed on this photo ({problem.GetType().Name}); examine it alone to see more.");
        }
        finally
        {
            _examiners.Add(examiner);
        }
    }

    private async Task NoteAsync(byte[] bytes, string reason, Action<string> say, CancellationToken cancel)
    {
        if (PhotoJob.From(bytes) is { } job)
        {
            await WithDatabaseAsync(() => catalogue.Intake.Refuse(job.File, job.Sha256, reason), say, cancel).ConfigureAwait(false);
        }
    }

    /// <summary>Does something with the database, as often as it takes while the database is away; one that answers and still refuses is believed in the end.</summary>
    private async Task<(bool? Value, string? Reason)> WithDatabaseAsync(Func<bool> act, Action<string> say, CancellationToken cancel)
    {
        for (var refusals = 0; ;)
        {
            try
            {
                return (act(), null);
            }
            catch (Exception problem) when (problem is DbException or DbUpdateException or InscriptionLabException or InvalidOperationException or TimeoutException or IOException)
            {
                refusals += catalogue.Intake.Answers() ? 1 : 0;
                if (refusals >= options.MostRefusals)
                {
                    return (null, $"The catalogue does not take it: {problem.GetBaseException().Message}");
                }

                say($"The catalogue {catalogue.Address.Name} does not answer; it is tried again.");
                await Task.Delay(options.Wait, cancel).ConfigureAwait(false);
            }
        }
    }

    private async Task PutAsideAsync(IChannel channel, byte[] bytes, string reason, CancellationToken cancel)
    {
        var properties = new BasicProperties
        {
            Persistent = true,
            ContentType = "application/json",
            Headers = new Dictionary<string, object?>(StringComparer.Ordinal) { ["reason"] = reason },
        };
        await channel.BasicPublishAsync(string.Empty, options.Aside, mandatory: true, properties, bytes, cancel).ConfigureAwait(false);
    }
}
