using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading;
using InscriptionLab.App;
using InscriptionLab.App.Demo;
using InscriptionLab.Assess.Truths;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Jpeg;
using SixLabors.ImageSharp.Processing;

namespace InscriptionLab.Benchmarks;

/// <summary>
/// Examines sample photos enlarged to 2, 12 and 24 megapixels: of one of them the time a stage, in this process and warm; of every lettered tube the time from start to end and the largest memory
/// of the program examining it as a command of its own.
/// </summary>
internal static class SizeTable
{
    private const string Sample = "script.jpg";
    private const int Runs = 5;
    private const int Failed = 1;
    private const int Quality = 92;
    private const double Megapixel = 1e6;
    private const double Megabyte = 1024 * 1024;

    private static readonly int[] Sizes = [2, 12, 24];

    /// <summary>How often the memory of the other process is looked at.</summary>
    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(10);

    internal static int Run(TextWriter output)
    {
        var scratch = Directory.CreateTempSubdirectory("inscriptionlab-sizes-").FullName;
        try
        {
            var lettered = TruthFolder.Read(Samples.Folder).Where(truth => truth.Kind is "tube" or "raking" && truth.Lines.Length > 0).Select(truth => truth.File).ToList();
            var times = Sizes.Select(size => Times(Enlarged(Sample, size, scratch))).ToList();
            _ = Command(Enlarged(Sample, Sizes[0], scratch), scratch);
            var commands = Sizes.Select(size => lettered.ConvertAll(photo => Command(Enlarged(photo, size, scratch), scratch))).ToList();
            output.WriteLine($"| stage, milliseconds (median of {Runs}) | {string.Join(" | ", Sizes.Select(size => $"{size} megapixels"))} |");
            output.WriteLine($"|---|{string.Concat(Sizes.Select(_ => "---|"))}");
            foreach (var stage in times.SelectMany(time => time.Keys).Distinct(StringComparer.Ordinal).ToList())
            {
                output.WriteLine($"| {stage} | {string.Join(" | ", times.Select(time => time.TryGetValue(stage, out var spent) ? spent.ToString("0", CultureInfo.InvariantCulture) : "-"))} |");
            }

            Row("largest memory of the command, MiB", "0", run => run.Peak / Megabyte);
            Row("the command from start to end, seconds", "0.00", run => run.Seconds);
            output.WriteLine($"\nStages of {Sample} enlarged, commands of {lettered.Count} lettered samples enlarged; {Environment.ProcessorCount} processor cores");
            return 0;

            void Row(string name, string format, Func<(double Peak, double Seconds), double> of) =>
                output.WriteLine($"| {name} (median, least and most) | {string.Join(" | ", commands.Select(runs => Spread([.. runs.Select(of).Order()], format)))} |");
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
    }

    private static string Enlarged(string sample, int megapixels, string folder)
    {
        using var image = Image.Load(Path.Combine(Samples.Folder, sample));
        var factor = Math.Sqrt(megapixels * Megapixel / (image.Width * image.Height));
        image.Mutate(picture => picture.Resize((int)Math.Round(image.Width * factor), (int)Math.Round(image.Height * factor)));
        var file = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{megapixels}-{sample}"));
        image.Save(file, new JpegEncoder { Quality = Quality });
        return file;
    }

    private static Dictionary<string, double> Times(string file)
    {
        using var composition = new Composition();
        var examiner = composition.Examiner(DemoReferences.Load());
        _ = examiner.Examine(file, CancellationToken.None);
        var (runs, whole) = (new List<Dictionary<string, double>>(), new List<double>());
        for (var run = 0; run < Runs; run++)
        {
            var clock = Stopwatch.StartNew();
            var done = examiner.Examine(file, CancellationToken.None);
            whole.Add(clock.Elapsed.TotalMilliseconds);
            runs.Add(done.Times.GroupBy(time => time.Stage, StringComparer.Ordinal).ToDictionary(stage => stage.Key, stage => stage.Sum(time => time.Elapsed.TotalMilliseconds), StringComparer.Ordinal));
        }

        var medians = runs[0].Keys.ToDictionary(stage => stage, stage => Median(runs.Select(run => run.GetValueOrDefault(stage))), StringComparer.Ordinal);
        medians["whole"] = Median(whole);
        return medians;
    }

    private static double Median(IEnumerable<double> values) => values.Order().ElementAt(Runs / 2);

    private static string Spread(double[] sorted, string format)
    {
        string Number(double value) => value.ToString(format, CultureInfo.InvariantCulture);
        return $"{Number(sorted[sorted.Length / 2])} ({Number(sorted[0])} to {Number(sorted[^1])})";
    }

    /// <summary>Runs the command on one photo; gives its largest resident memory in bytes and the seconds from its start to its end.</summary>
    private static (double Peak, double Seconds) Command(string file, string scratch)
    {
        var clock = Stopwatch.StartNew();
        var start = new ProcessStartInfo(Path.Combine(Samples.Root, "lab"), ["examine", file, "--out", Path.Combine(scratch, "record")]) { RedirectStandardOutput = true, RedirectStandardError = true };
        using var process = Process.Start(start) ?? throw new InvalidOperationException("./lab could not be started.");
        process.OutputDataReceived += static (_, _) => { };
        process.ErrorDataReceived += static (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        long peak = 0;
        while (!process.WaitForExit(Look))
        {
            peak = Math.Max(peak, MostHeld(process));
        }

        var seconds = clock.Elapsed.TotalSeconds;
        return process.ExitCode == 0 ? (peak, seconds) : throw new InvalidOperationException($"./lab examine {file} ended with {process.ExitCode}.");
    }

    /// <summary>Gives the most memory that a process has held so far, in bytes; 0 where it ended just now.</summary>
    private static long MostHeld(Process process)
    {
        try
        {
            process.Refresh();
            return process.PeakWorkingSet64;
        }
        catch (InvalidOperationException)
        {
            return 0;
        }
    }
}
