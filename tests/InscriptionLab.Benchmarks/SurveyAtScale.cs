using System;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Linq;
using OpenCvSharp;

namespace InscriptionLab.Benchmarks;

/// <summary>
/// Surveys as many photos as asked for, all different, with <c>./lab survey</c>: photos a second, processor seconds a photo, memory, bytes of
/// results, and how long a second run takes that finds everything done. Processor seconds hardly depend on what else the machine does.
/// </summary>
internal static class SurveyAtScale
{
    private const int Failed = 1;
    private const int Misused = 2;
    private const double TicksPerSecond = 100; // USER_HZ, fixed at 100 on Linux (man 5 proc)
    private const double BytesPerMegabyte = 1e6;

    internal static int Run(string[] arguments, TextWriter output)
    {
        if (arguments is not [var word] || !int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var count) || count == 0)
        {
            Console.Error.WriteLine("bench survey needs how many photos, for example ./lab bench survey 100.");
            return Misused;
        }

        var scratch = Directory.CreateTempSubdirectory("inscriptionlab-bench-").FullName;
        try
        {
            var photos = Directory.CreateDirectory(Path.Combine(scratch, "photos")).FullName;
            var bytes = MakePhotos(photos, count);
            var results = Path.Combine(scratch, "results");
            string[] survey = ["survey", photos, "--out", results, "--catalogue", Path.Combine(scratch, "kept.db")];
            Usage("--version");
            var first = Usage(survey);
            var again = Usage(survey);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count} photos of {bytes / BytesPerMegabyte / count:0.00} MB, {Environment.ProcessorCount} cores, load {File.ReadAllText("/proc/loadavg").Split(' ')[0]}"));
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{first.Seconds:0.0} s, {count / first.Seconds:0.00} photos a second, {first.ProcessorSeconds / count:0.00} processor seconds a photo, most memory held {first.Megabytes:0} MB"));
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Size(results) / count:0} bytes of results a photo, {new FileInfo(Path.Combine(results, "journal.log")).Length / count} of them journal; {new FileInfo(Path.Combine(scratch, "kept.db")).Length / count} bytes of catalogue a photo"));
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"the same again, all done before: {again.Seconds:0.0} s, most memory held {again.Megabytes:0} MB"));
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

    /// <summary>Makes photos from the samples: cut a little otherwise, lighter or darker, with noise, saved again.</summary>
    private static long MakePhotos(string folder, int count)
    {
        const int MostCut = 16;
        var random = new Random(5);
        var samples = Directory.GetFiles(Samples.Folder, "*.jpg").Order(StringComparer.Ordinal).ToList();
        long bytes = 0;
        for (var number = 0; number < count; number++)
        {
            using var whole = Cv2.ImRead(samples[number % samples.Count]);
            var (left, top) = (random.Next(MostCut), random.Next(MostCut));
            using var cut = new Mat(whole, new Rect(left, top, whole.Width - left - random.Next(MostCut), whole.Height - top - random.Next(MostCut)));
            using var lit = new Mat();
            cut.ConvertTo(lit, MatType.CV_16SC3, 0.9 + (0.2 * random.NextDouble()));
            using var noise = new Mat(lit.Size(), MatType.CV_16SC3);
            Cv2.SetTheRNG((ulong)number + 1);
            Cv2.Randn(noise, Scalar.All(0), Scalar.All(2));
            using var noisy = new Mat();
            Cv2.Add(lit, noise, noisy);
            using var done = new Mat();
            noisy.ConvertTo(done, MatType.CV_8UC3);
            var file = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{number:000000}.jpg"));
            Cv2.ImWrite(file, done, new ImageEncodingParam(ImwriteFlags.JpegQuality, random.Next(88, 96)));
            bytes += new FileInfo(file).Length;
        }

        return bytes;
    }

    /// <summary>Runs the program and watches what it uses.</summary>
    private static (double Seconds, double ProcessorSeconds, double Megabytes) Usage(params string[] arguments)
    {
        var start = new ProcessStartInfo(Path.Combine(Samples.Root, "lab"), arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        var clock = Stopwatch.StartNew();
        using var process = Process.Start(start) ?? throw new InvalidOperationException("./lab could not be started.");
        var (errors, said) = (process.StandardError.ReadToEndAsync(), process.StandardOutput.ReadToEndAsync());
        var (processor, memory) = (0.0, 0.0);
        while (!process.WaitForExit(100))
        {
            (processor, memory) = Seen(process.Id) is var (ticks, kilobytes) ? (ticks / TicksPerSecond, Math.Max(memory, kilobytes / 1e3)) : (processor, memory);
        }

        var seconds = clock.Elapsed.TotalSeconds;
        _ = said.GetAwaiter().GetResult();
        return process.ExitCode == 0
            ? (seconds, processor, memory)
            : throw new InvalidOperationException($"./lab {string.Join(' ', arguments)} failed: {errors.GetAwaiter().GetResult().Trim()}");
    }

    /// <summary>Reads what the system says of a running program (man 5 proc): user and system time, and the most memory that it held.</summary>
    private static (double Ticks, double Kilobytes)? Seen(int process)
    {
        try
        {
            var folder = string.Create(CultureInfo.InvariantCulture, $"/proc/{process}/");
            var stat = File.ReadAllText(folder + "stat");
            var words = stat[(stat.LastIndexOf(')') + 2)..].Split(' ');
            var peak = File.ReadLines(folder + "status").FirstOrDefault(line => line.StartsWith("VmHWM:", StringComparison.Ordinal));
            return peak is null ? null : (double.Parse(words[11], CultureInfo.InvariantCulture) + double.Parse(words[12], CultureInfo.InvariantCulture), double.Parse(peak[6..^2], CultureInfo.InvariantCulture));
        }
        catch (IOException)
        {
            return null;
        }
    }

    private static double Size(string folder) => Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Sum(file => (double)new FileInfo(file).Length);
}
