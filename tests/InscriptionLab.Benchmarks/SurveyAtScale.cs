using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;

namespace InscriptionLab.Benchmarks;

/// <summary>
/// Surveys as many photos as asked for: photos a second, processor seconds a photo and memory at checkpoints, so that one run shows whether they stay the same;
/// bytes of results, and how long a second run takes that finds everything done. Processor seconds hardly depend on what else the machine does.
/// </summary>
internal static class SurveyAtScale
{
    private const int Failed = 1;
    private const int Misused = 2;
    private const double BytesPerMegabyte = 1e6;
    private const int Checkpoints = 10;
    private static readonly int[] FirstCheckpoints = [10, 100, 1000];

    internal static int Run(string[] arguments, TextWriter output)
    {
        if (SurveyArguments.Parse(arguments) is not { } asked)
        {
            Console.Error.WriteLine(SurveyArguments.Usage);
            return Misused;
        }

        var scratch = asked.Scratch is { } kept ? Directory.CreateDirectory(kept).FullName : Directory.CreateTempSubdirectory("inscriptionlab-bench-").FullName;
        try
        {
            Run(asked, scratch, output);
            return 0;
        }
        catch (InvalidOperationException problem)
        {
            Console.Error.WriteLine(problem.Message);
            return Failed;
        }
        finally
        {
            if (asked.Scratch is null)
            {
                Directory.Delete(scratch, recursive: true);
            }
        }
    }

    private static void Run(SurveyArguments asked, string scratch, TextWriter output)
    {
        var (photos, results, catalogue) = (Path.Combine(scratch, "photos"), Path.Combine(scratch, "results"), Path.Combine(scratch, "kept.db"));
        var bytes = NumberedPhotos.Fill(photos, asked.Count);
        var journal = Path.Combine(results, "journal.log");
        var workers = asked.Workers ?? Environment.ProcessorCount;
        string[] survey = ["survey", photos, "--out", results, "--catalogue", catalogue, "--workers", string.Create(CultureInfo.InvariantCulture, $"{workers}")];
        if (asked.Program is null)
        {
            new WatchedSurvey(null, journal).Run(["--version"], _ => { });
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{asked.Count} photos of {bytes / BytesPerMegabyte / asked.Count:0.00} MB, copies of {Directory.GetFiles(Samples.Folder, "*.jpg").Length} samples that differ in their bytes and not in their pixels; {workers} workers on {Environment.ProcessorCount} cores, load {Load()}"));
        var table = new CheckpointTable(Marks(asked), output, asked.Csv);
        var last = new WatchedSurvey(asked.Program, journal).Run(survey, table.See);
        table.End(last);
        var again = new WatchedSurvey(asked.Program, journal).Run(survey, _ => { });
        var now = last.Done - table.Before;
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{now} photos in {last.Seconds:0.0} s, start and tables included: {now / last.Seconds:0.00} photos a second, {last.ProcessorSeconds / Math.Max(1, now):0.00} processor seconds a photo, most memory held {last.MostMegabytes:0} MB; load {Load()}"));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Size(results) / asked.Count:0} bytes of results a photo, {new FileInfo(journal).Length / asked.Count} of them journal; {new FileInfo(catalogue).Length / asked.Count} bytes of catalogue a photo"));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"the same again, all done before: {again.Seconds:0.0} s, most memory held {again.MostMegabytes:0} MB"));
    }

    private static IEnumerable<int> Marks(SurveyArguments asked)
    {
        var every = asked.Every ?? Math.Max(1, asked.Count / Checkpoints);
        return Enumerable.Range(1, asked.Count / every).Select(number => number * every).Concat(FirstCheckpoints).Where(mark => mark < asked.Count).Append(asked.Count).Distinct().Order();
    }

    private static string Load() => File.ReadAllText("/proc/loadavg").Split(' ')[0];

    private static double Size(string folder) => Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Sum(file => (double)new FileInfo(file).Length);
}
