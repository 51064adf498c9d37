using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading;
using InscriptionLab.App;
using InscriptionLab.App.Demo;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Jpeg;
using SixLabors.ImageSharp.Processing;

namespace InscriptionLab.Benchmarks;

/// <summary>Examines one sample photo enlarged to 2, 12 and 24 megapixels: time a stage, in this process and warm, and the largest memory of the program examining it as a command of its own.</summary>
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
            var photos = Sizes.Select(size => Enlarged(size, scratch)).ToList();
            var times = photos.ConvertAll(Times);
            var memory = photos.ConvertAll(photo => Peak(photo, scratch));
            output.WriteLine($"| stage, milliseconds (median of {Runs}) | {string.Join(" | ", Sizes.Select(size => $"{size} megapixels"))} |");
            output.WriteLine($"|---|{string.Concat(Sizes.Select(_ => "---|"))}");
            foreach (var stage in times.SelectMany(time => time.Keys).Distinct(StringComparer.Ordinal).ToList())
            {
                output.WriteLine($"| {stage} | {string.Join(" | ", times.Select(time => time.TryGetValue(stage, out var spent) ? spent.ToString("0", CultureInfo.InvariantCulture) : "-"))} |");
            }

            output.WriteLine($"| largest memory of the command, MiB | {string.Join(" | ", memory.Select(peak => (peak / Megabyte).ToString("0", CultureInfo.InvariantCulture)))} |");
            output.WriteLine($"\n{Sample} enlarged, {Environment.ProcessorCount} processor cores");
            return 0;
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

    private static string Enlarged(int megapixels, string folder)
    {
        using var image = Image.Load(Path.Combine(Samples.Folder, Sample));
        var factor = Math.Sqrt(megapixels * Megapixel / (image.Width * image.Height));
        image.Mutate(picture => picture.Resize((int)Math.Round(image.Width * factor), (int)Math.Round(image.Height * factor)));
        var file = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{megapixels}.jpg"));
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

    /// <summary>Gives the largest resident memory, in bytes, of the command on one photo.</summary>
    private static double Peak(string file, string scratch)
    {
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

        return process.ExitCode == 0 ? peak : throw new InvalidOperationException($"./lab examine {file} ended with {process.ExitCode}.");
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
