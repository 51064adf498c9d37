using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.Cataloguing;
using InscriptionLab.Files;
using RabbitMQ.Client;

namespace InscriptionLab.Surveys.Queue;

/// <summary>Lists photos and hands them to the broker, each one confirmed. What the catalogue has already is not sent; what is sent twice after a break is examined once.</summary>
/// <param name="broker">Address of the broker.</param>
/// <param name="options">How the queue is used.</param>
/// <param name="catalogue">The catalogue that the workers fill.</param>
/// <param name="versions">What will examine them.</param>
public sealed class QueueFeeder(string broker, QueueOptions options, Catalogue catalogue, EntryVersions versions)
{
    /// <summary>Sends the photos of a survey.</summary>
    /// <param name="request">The survey.</param>
    /// <param name="survey">How photos are found.</param>
    /// <param name="say">Told when the broker is waited for, and of what could not be read.</param>
    /// <param name="cancel">Stops the sending.</param>
    /// <returns>How many photos were sent, and how many were not because they are known or have the bytes of another.</returns>
    /// <exception cref="Outcomes.InscriptionLabException">A folder or the address cannot be used.</exception>
    public async Task<(int Sent, int Known)> FeedAsync(SurveyRequest request, SurveyOptions survey, Action<string> say, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(survey);
        ArgumentNullException.ThrowIfNull(say);
        var address = PhotoQueue.Address(broker);
        var (files, _, unopened) = FileLister.List(request, survey);
        foreach (var folder in unopened)
        {
            say($"{folder}: the folder cannot be opened, so its photos are not sent; check that you may open it.");
        }

        var jobs = Jobs(files, say, cancel);
        var sent = 0;
        while (sent < jobs.Count)
        {
            try
            {
                await using var connection = await PhotoQueue.ConnectAsync(address, cancel).ConfigureAwait(false);
                await using var channel = await connection.CreateChannelAsync(new CreateChannelOptions(publisherConfirmationsEnabled: true, publisherConfirmationTrackingEnabled: true), cancel).ConfigureAwait(false);
                await PhotoQueue.DeclareAsync(channel, options, cancel).ConfigureAwait(false);
                while (sent < jobs.Count)
                {
                    var batch = jobs.Skip(sent).Take(options.Unconfirmed).ToList();
                    await Task.WhenAll(batch.Select(job => SendAsync(channel, job, cancel))).ConfigureAwait(false);
                    sent += batch.Count;
                }
            }
            catch (Exception problem) when (PhotoQueue.IsBreak(problem) && !cancel.IsCancellationRequested)
            {
                say(PhotoQueue.Away(address));
                await Task.Delay(options.Wait, cancel).ConfigureAwait(false);
            }
        }

        return (sent, _known);
    }

    private int _known;

    private List<PhotoJob> Jobs(ImmutableArray<SurveyFile> files, Action<string> say, CancellationToken cancel)
    {
        var jobs = new List<PhotoJob>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var file in files)
        {
            cancel.ThrowIfCancellationRequested();
            if (HashOf(file.Path) is not { } sha256)
            {
                var sentence = $"{file.Path}: the file cannot be read; check that you may open it.";
                catalogue.Intake.Refuse(file.Path, null, sentence);
                say(sentence);
                continue;
            }

            if (!seen.Add(sha256) || catalogue.Intake.Has(sha256, versions))
            {
                _known++;
                continue;
            }

            jobs.Add(new PhotoJob(file.Path, sha256, file.ObjectKey, file.OfferedAs, file.Bytes, file.ChangedAt));
        }

        return jobs;
    }

    private async Task SendAsync(IChannel channel, PhotoJob job, CancellationToken cancel)
    {
        var properties = new BasicProperties { Persistent = true, MessageId = job.Sha256, ContentType = "application/json" };
        await channel.BasicPublishAsync(string.Empty, options.Photos, mandatory: true, properties, job.ToBytes(), cancel).ConfigureAwait(false);
    }

    private static string? HashOf(string file)
    {
        try
        {
            return FileHash.Of(file);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
