using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Linq;
using InscriptionLab.App.Records;
using InscriptionLab.Assess.Scores;
using InscriptionLab.Assess.Truths;

namespace InscriptionLab.Benchmarks;

/// <summary>Runs <c>./lab examine</c> and the plain <c>tesseract</c> command on the same photos, one after the other, each as a command of its own with its start-up, and compares time and errors.</summary>
internal static class SideBySide
{
    private const int Failed = 1;

    internal static int Run(TextWriter output)
    {
        var photos = TruthFolder.Read(Samples.Folder).Where(truth => truth.Kind is "tube" or "raking" && truth.Lines.Length > 0).ToList();
        var (ours, plain) = (new List<TextScore>(), new List<TextScore>());
        var (oursSeconds, plainSeconds) = (new List<double>(), new List<double>());
        var scratch = Directory.CreateTempSubdirectory("inscriptionlab-bench-").FullName;
        try
        {
            _ = Command(Path.Combine(Samples.Root, "lab"), "--version");
            output.WriteLine("| photo | lab examine | errors | tesseract | errors | letters |");
            output.WriteLine("|---|---|---|---|---|---|");
            foreach (var truth in photos)
            {
                var photo = Path.Combine(Samples.Folder, truth.File);
                var (own, ownTime) = Command(Path.Combine(Samples.Root, "lab"), "examine", photo, "--json", "-", "--out", scratch);
                var (other, otherTime) = Command("tesseract", photo, "stdout", "--psm", "11");
                ours.Add(TextScorer.Score(truth, own.Split('\n').Where(line => line.StartsWith('{')).SelectMany(line => JsonLines.PhotoOf(line).Lines).Select(line => line.Text)));
                plain.Add(TextScorer.Score(truth, other.Split('\n')));
                oursSeconds.Add(ownTime);
                plainSeconds.Add(otherTime);
                output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {truth.File} | {ownTime:0.00} s | {ours[^1].Edits} | {otherTime:0.00} s | {plain[^1].Edits} | {ours[^1].Letters} |"));
            }
        }
        catch (InvalidOperationException problem)
        {
            Console.Error.WriteLine(problem.Message);
            return Failed;
        }
        finally
        {
            Directory.Delete(scratch, recursive: true);
        }

        Sum(output, "lab examine", ours, oursSeconds);
        Sum(output, "tesseract --psm 11", plain, plainSeconds);
        return 0;
    }

    private static void Sum(TextWriter output, string name, List<TextScore> scores, List<double> seconds)
    {
        var figures = new TextFigures(name, scores);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{name}: {figures.Edits} errors on {figures.Letters} letters of {figures.Photos} photos ({100.0 * figures.Edits / figures.Letters:0.0} %), median {Spread.Of(seconds)!.Median:0.00} s a photo, start-up included, {Environment.ProcessorCount} processor cores"));
    }

    private static (string Output, double Seconds) Command(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        var clock = Stopwatch.StartNew();
        using var process = Process.Start(start) ?? throw new InvalidOperationException($"{program} could not be started.");
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0
            ? (output, clock.Elapsed.TotalSeconds)
            : throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} failed: {error.GetAwaiter().GetResult().Trim()}");
    }
}
