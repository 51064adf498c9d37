using System;
using System.Collections.Immutable;
using System.Globalization;
using System.IO;
using System.IO.Compression;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.Exchange;
using InscriptionLab.Outcomes;
using InscriptionLab.Page.Bench;
using Microsoft.Extensions.Logging;

namespace InscriptionLab.Page.Keeping;

/// <summary>Makes data sets of what a search found, one at a time, and keeps the latest as one file until the next one or the end of the program.</summary>
/// <param name="shelf">The catalogue.</param>
/// <param name="workshop">The clock.</param>
/// <param name="announcer">Told whenever something changed.</param>
/// <param name="log">For what must not happen.</param>
internal sealed partial class DatasetDesk(CatalogueShelf shelf, Workshop workshop, Announcer announcer, ILogger<DatasetDesk> log) : IDisposable
{
    /// <summary>Most examinations of one data set: all pairs of marks are compared, and the file is kept on this machine.</summary>
    internal const int MostExaminations = 20_000;

    /// <summary>A step is told again after so many of its parts.</summary>
    private const int ToldEach = 20;

    private readonly Lock _gate = new();
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("inscriptionlab-set-");
    private CancellationTokenSource? _running;
    private Task _work = Task.CompletedTask;
    private DatasetState _state = DatasetState.None;

    /// <summary>Gets how far it is; a whole new record each time.</summary>
    internal DatasetState State
    {
        get
        {
            lock (_gate)
            {
                return _state;
            }
        }
    }

    /// <summary>Gets the file of the latest data set; null where there is none.</summary>
    internal string? File => State.Result is not null && System.IO.File.Exists(Zip) ? Zip : null;

    private string Zip => Path.Combine(_folder.FullName, "lettering.zip");

    public void Dispose()
    {
        Stop();
        try
        {
            _work.Wait(TimeSpan.FromSeconds(5));
            _folder.Delete(recursive: true);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or AggregateException)
        {
            // The system's own cleaning of its temporary folder takes what could not be deleted.
        }

        _running?.Dispose();
    }

    /// <summary>Begins a data set.</summary>
    /// <param name="examinations">Numbers of the examinations.</param>
    /// <param name="licence">Licence as the person states it; null where not stated.</param>
    /// <param name="seed">Changes which object falls into which part.</param>
    /// <param name="threshold">Mean likeness down to which groups are joined.</param>
    /// <exception cref="InscriptionLabException">One is being made, or too much was chosen.</exception>
    internal void Begin(ImmutableHashSet<long> examinations, string? licence, int seed, float threshold)
    {
        if (examinations.Count > MostExaminations)
        {
            throw new InscriptionLabException(string.Create(CultureInfo.InvariantCulture, $"More than {MostExaminations} examinations were chosen: narrow the search, or use ./lab dataset, which has no such limit."));
        }

        _ = shelf.Open;
        lock (_gate)
        {
            if (_state.IsWorking)
            {
                throw new InscriptionLabException("A data set is being made already; wait for it, or stop it.");
            }

            _running?.Dispose();
            _running = new CancellationTokenSource();
            _state = DatasetState.None with { IsWorking = true };
            var cancel = _running.Token;
            _work = Task.Run(() => Make(new DatasetRequest(Path.Combine(_folder.FullName, Guid.NewGuid().ToString("N")), licence, seed) { Examinations = examinations, Threshold = threshold }, cancel), CancellationToken.None);
        }

        Say();
    }

    /// <summary>Stops the data set that is being made.</summary>
    internal void Stop()
    {
        lock (_gate)
        {
            _running?.Cancel();
        }
    }

    private void Make(DatasetRequest request, CancellationToken cancel)
    {
        DatasetState end;
        try
        {
            var built = new DatasetFolder(shelf.Open, workshop.Clock).Write(request, new Teller(this), cancel);
            System.IO.File.Delete(Zip);
            ZipFile.CreateFromDirectory(request.Out, Zip, CompressionLevel.Fastest, includeBaseDirectory: false);
            end = DatasetState.None with { Result = built, Bytes = new FileInfo(Zip).Length };
        }
        catch (OperationCanceledException)
        {
            end = DatasetState.None with { Problem = "The data set was stopped; nothing of it is kept." };
        }
        catch (InscriptionLabException problem)
        {
            end = DatasetState.None with { Problem = problem.Message };
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            LogStumble(log, problem);
            end = DatasetState.None with { Problem = "The data set could not be written: look whether the disk with the temporary files is full." };
        }
#pragma warning disable CA1031 // What goes wrong here must end as a sentence on the page, not as a data set that never ends.
        catch (Exception problem)
#pragma warning restore CA1031
        {
            LogStumble(log, problem);
            end = DatasetState.None with { Problem = "The program stumbled over the data set; the terminal in which it runs says more." };
        }

        Clear(request.Out);
        Set(_ => end);
    }

    private void Set(Func<DatasetState, DatasetState> change)
    {
        lock (_gate)
        {
            _state = change(_state);
        }

        Say();
    }

    private void Say() => announcer.Say(new Announcement("dataset", string.Empty, 0));

    private static void Clear(string folder)
    {
        try
        {
            Directory.Delete(folder, recursive: true);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // It goes with the folder round it when the program ends.
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "The data set stumbled.")]
    private static partial void LogStumble(ILogger log, Exception problem);

    private sealed class Teller(DatasetDesk desk) : IProgress<DatasetProgress>
    {
        public void Report(DatasetProgress value)
        {
            if (value.Done % ToldEach == 0)
            {
                desk.Set(state => state with { Progress = value });
            }
        }
    }
}
