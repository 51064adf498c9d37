using System;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Threading;
using InscriptionLab.App.Cataloguing;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Reports;
using InscriptionLab.Cataloguing;
using InscriptionLab.Surveys;

namespace InscriptionLab.App.Surveying;

/// <summary>Runs a survey and says on the screen how far it is and what it came to.</summary>
/// <param name="composition">The program.</param>
/// <param name="output">Results.</param>
/// <param name="error">Progress and complaints.</param>
internal sealed class SurveyReport(Composition composition, TextWriter output, TextWriter error)
{
    /// <summary>How often the progress is said.</summary>
    private static readonly TimeSpan Every = TimeSpan.FromSeconds(5);

    private const double BytesPerMegabyte = 1e6;
    private readonly Lock _gate = new();
    private long _said;

    /// <summary>Runs.</summary>
    /// <param name="request">What is asked, its settings left empty.</param>
    /// <param name="reference">The user's list; null for the demonstration list.</param>
    /// <param name="catalogueAddress">Catalogue to fill as well; null for none.</param>
    /// <param name="cancel">Stops the survey; it can go on later.</param>
    /// <returns>True where every folder could be opened.</returns>
    internal bool Run(SurveyRequest request, string? reference, string? catalogueAddress, CancellationToken cancel)
    {
        var references = ReferenceSource.Load(reference);
        foreach (var warning in references.Warnings)
        {
            error.WriteLine(warning);
        }

        var options = new SurveyOptions();
        composition.WorkSideBySide(request.Workers);
        var catalogue = catalogueAddress is null ? null : Catalogue.Open(catalogueAddress, composition.Clock);
        var settings = new EntryMaker(composition.Models, references.List, composition.Clock).Settings();
        var run = new SurveyRun(request with { Settings = settings }, options, () => new ProgramExaminer(composition, references.List, options.ThumbnailSide), catalogue is null ? null : entry => catalogue.Intake.Add(entry, ProgramExaminer.By), composition.Clock);
        _said = composition.Clock.GetTimestamp();
        var result = run.RunAsync(Say, cancel).GetAwaiter().GetResult();
        Summarise(request, result);
        if (result.Damaged > 0)
        {
            var lines = result.Damaged == 1 ? "1 line of the journal was" : string.Create(CultureInfo.InvariantCulture, $"{result.Damaged} lines of the journal were");
            error.WriteLine(OneLine.Of($"{request.Out}: {lines} damaged and left out; photos told of there were examined again, and nothing else is lost, but look whether the disk is sound."));
        }

        foreach (var folder in result.Unopened)
        {
            error.WriteLine(OneLine.Of($"{folder}: the folder cannot be opened, so its photos were passed over; check that you may open it and run the same again."));
        }

        if (reference is null)
        {
            error.WriteLine(ReferenceSource.DemonstrationNote);
        }

        return result.Unopened.IsEmpty;
    }

    private void Say(SurveyProgress progress)
    {
        lock (_gate)
        {
            if (composition.Clock.GetElapsedTime(_said) < Every && progress.Done < progress.Total)
            {
                return;
            }

            _said = composition.Clock.GetTimestamp();
            var left = progress.Left is { } time ? $", {Words(time)} left" : string.Empty;
            error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{progress.Done} of {progress.Total} photos, {progress.PerSecond:0.00} a second{left}, {progress.Unusable} unusable"));
        }
    }

    private void Summarise(SurveyRequest request, SurveyResult result)
    {
        foreach (var count in result.Counts)
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count.Group}: {count.Count} of {count.Of} {count.Outcome} (95 % interval {100 * count.Interval.Low:0.0} to {100 * count.Interval.High:0.0} %)"));
        }

        using var process = Process.GetCurrentProcess();
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{result.Photos} files: {result.ExaminedNow} examined now in {Words(result.Elapsed)} ({result.ExaminedNow / Math.Max(1e-3, result.Elapsed.TotalSeconds):0.00} a second), {result.Same} with the bytes of another, {result.Unusable} unusable, {result.Others} other files passed over; most memory held {process.PeakWorkingSet64 / BytesPerMegabyte:0} MB"));
        output.WriteLine($"written to {Path.Combine(request.Out, "index.html")}");
    }

    private static string Words(TimeSpan time) => time.TotalHours >= 1
        ? string.Create(CultureInfo.InvariantCulture, $"{(int)time.TotalHours} h {time.Minutes} min")
        : time.TotalMinutes >= 1 ? string.Create(CultureInfo.InvariantCulture, $"{time.Minutes} min {time.Seconds} s") : string.Create(CultureInfo.InvariantCulture, $"{time.TotalSeconds:0.0} s");
}
