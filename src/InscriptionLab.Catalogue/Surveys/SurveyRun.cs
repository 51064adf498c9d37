using System;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Security.Cryptography;
using System.Threading;
using System.Threading.Channels;
using System.Threading.Tasks;
using InscriptionLab.Cataloguing;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Surveys;

/// <summary>
/// Examines every photo of the folders, as many at a time as there are workers, and writes the results. Stopped at any moment, even
/// by force, it goes on at the next start: what is in the journal is not done again but for faults that may pass; what is not there is.
/// </summary>
/// <param name="request">What is asked.</param>
/// <param name="options">How it goes about it.</param>
/// <param name="newExaminer">Makes the examiner of one worker.</param>
/// <param name="keep">Keeps an entry in a catalogue; null where none is filled. It is called before the journal notes the photo, so a kill between the two has it called again.</param>
/// <param name="clock">The clock.</param>
public sealed class SurveyRun(SurveyRequest request, SurveyOptions options, Func<IPhotoExaminer> newExaminer, Action<CatalogueEntry>? keep, TimeProvider clock)
{
    /// <summary>Name of the journal in the folder of results.</summary>
    internal const string JournalName = "journal.log";

    /// <summary>How many files wait for each worker: enough that none stands idle.</summary>
    private const int WaitingPerWorker = 2;

    private readonly Lock _gate = new();
    private SurveyTally _tally = new(0, clock);

    /// <summary>Runs.</summary>
    /// <param name="progress">Told after each photo.</param>
    /// <param name="cancel">Stops the run between two stages of a photo.</param>
    /// <exception cref="InscriptionLabException">A folder cannot be used.</exception>
    public async Task<SurveyResult> RunAsync(Action<SurveyProgress> progress, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(progress);
        var start = clock.GetTimestamp();
        var (files, others, unopened) = FileLister.List(request, options);
        MakeFolder();
        using var journal = SurveyJournal.Open(Path.Combine(request.Out, JournalName), request.Settings, options, clock);
        _tally = new SurveyTally(files.Length, clock);
        foreach (var file in files.Where(journal.IsDone))
        {
            _tally.FromBefore(journal.Read(file.Path)!.Fault is not null);
        }

        await ExamineAsync(files, journal, progress, cancel).ConfigureAwait(false);
        var (unusable, same, counts) = await new SurveyFolder(request.Out, options, journal).WriteAsync(files, cancel).ConfigureAwait(false);
        return new SurveyResult(files.Length, _tally.ExaminedNow, unusable, same, others, journal.Damaged, unopened, clock.GetElapsedTime(start), counts);
    }

    private void MakeFolder()
    {
        try
        {
            Directory.CreateDirectory(Path.Combine(request.Out, SurveyFolder.Thumbnails));
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new InscriptionLabException($"{request.Out}: the results cannot be written there; name another folder with --out.", problem);
        }
    }

    private async Task ExamineAsync(ImmutableArray<SurveyFile> files, SurveyJournal journal, Action<SurveyProgress> progress, CancellationToken cancel)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        var waiting = Channel.CreateBounded<(SurveyFile File, string Sha256)>(request.Workers * WaitingPerWorker);
        var workers = Enumerable.Range(0, request.Workers).Select(_ => Task.Run(() => WorkAsync(waiting.Reader, journal, progress, stop.Token), stop.Token)).ToList();
        var feeder = FeedAsync(files, waiting.Writer, journal, progress, stop.Token);
        try
        {
            await foreach (var finished in Task.WhenEach([feeder, .. workers]).WithCancellation(CancellationToken.None).ConfigureAwait(false))
            {
                await finished.ConfigureAwait(false);
            }
        }
        catch
        {
            await stop.CancelAsync().ConfigureAwait(false);
            await Task.WhenAll([feeder, .. workers]).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            throw;
        }
    }

    /// <summary>Hands out each photo once: files already done are passed over, files with the same bytes as another share its result.</summary>
    private async Task FeedAsync(ImmutableArray<SurveyFile> files, ChannelWriter<(SurveyFile File, string Sha256)> waiting, SurveyJournal journal, Action<SurveyProgress> progress, CancellationToken cancel)
    {
        try
        {
            var handedOut = journal.Examined.Keys.ToHashSet(StringComparer.Ordinal);
            foreach (var file in files.Where(file => !journal.IsDone(file)))
            {
                if (await HashAsync(file, cancel).ConfigureAwait(false) is not { } sha256)
                {
                    Finish(journal, JournalEntry.About(file, null) with { Fault = $"{file.Path}: the file cannot be read; check that you may open it." }, progress);
                }
                else if (!handedOut.Add(sha256))
                {
                    Finish(journal, JournalEntry.About(file, sha256) with { Same = true }, progress);
                }
                else if (journal.BegunInVain(file.Path) >= options.MostBegins)
                {
                    Finish(journal, JournalEntry.About(file, sha256) with { Fault = $"{file.Path}: the program stopped or ran out of time {options.MostBegins} times while it examined this photo; it was left out." }, progress);
                }
                else
                {
                    await waiting.WriteAsync((file, sha256), cancel).ConfigureAwait(false);
                }
            }
        }
        finally
        {
            waiting.Complete();
        }
    }

    private async Task WorkAsync(ChannelReader<(SurveyFile File, string Sha256)> waiting, SurveyJournal journal, Action<SurveyProgress> progress, CancellationToken cancel)
    {
        using var examiner = newExaminer();
        await foreach (var (file, sha256) in waiting.ReadAllAsync(cancel).ConfigureAwait(false))
        {
            lock (_gate)
            {
                journal.Add(new JournalEntry { Begins = file.Path });
            }

            var (entry, kept) = Examine(examiner, file, sha256, cancel);
            if (kept is not null)
            {
                keep?.Invoke(kept);
            }

            Finish(journal, entry, progress);
        }
    }

    private (JournalEntry Entry, CatalogueEntry? Kept) Examine(IPhotoExaminer examiner, SurveyFile file, string sha256, CancellationToken cancel)
    {
        try
        {
            var result = examiner.Examine(file, cancel);
            SurveyFolder.WriteThumbnail(request.Out, sha256, result.Thumbnail.AsSpan());
            return (JournalEntry.Of(file, sha256, result), result.Entry);
        }
        catch (InscriptionLabException problem)
        {
            return (JournalEntry.About(file, sha256) with { Fault = problem.Message, MayPass = problem.MayPass }, null);
        }
#pragma warning disable CA1031 // One photo among thousands must not end the survey; the fault is listed with its kind, and the single photo shows it in full.
        catch (Exception problem) when (problem is not (OperationCanceledException or OutOfMemoryException or IOException))
#pragma warning restore CA1031
        {
            return (JournalEntry.About(file, sha256) with { Fault = $"{file.Path}: the program failed on this photo ({problem.GetType().Name}); examine it alone to see more." }, null);
        }
    }

    private void Finish(SurveyJournal journal, JournalEntry entry, Action<SurveyProgress> progress)
    {
        lock (_gate)
        {
            journal.Add(entry);
            progress(_tally.Next(entry.Fault is not null, !entry.Same && entry.Fault is null));
        }
    }

    private static async Task<string?> HashAsync(SurveyFile file, CancellationToken cancel)
    {
        try
        {
            using var stream = new FileStream(file.Path, FileMode.Open, FileAccess.Read, FileShare.Read, 1, FileOptions.Asynchronous | FileOptions.SequentialScan);
            return Convert.ToHexStringLower(await SHA256.HashDataAsync(stream, cancel).ConfigureAwait(false));
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
