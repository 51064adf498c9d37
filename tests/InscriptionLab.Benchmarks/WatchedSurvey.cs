using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;

namespace InscriptionLab.Benchmarks;

/// <summary>A survey as a process of its own, watched from outside: what the system says of it, and what its journal says it has done.</summary>
internal sealed class WatchedSurvey(string? program, string journal)
{
    private const double TicksPerSecond = 100; // USER_HZ, fixed at 100 on Linux (man 5 proc)
    private const double KilobytesPerMegabyte = 1e6 / 1024; // what Linux calls kB are 1024 bytes
    private const int Patience = 100;
    private static readonly byte[] Finished = Encoding.ASCII.GetBytes("{\"file\":");
    private static readonly int SumLength = "01234567 ".Length;

    private long _read;
    private int _done;
    private byte[] _rest = [];

    /// <summary>One look at the running survey.</summary>
    /// <param name="Done">Files that the journal calls done, those of earlier runs included.</param>
    /// <param name="Seconds">Since its start.</param>
    /// <param name="ProcessorSeconds">Processor time so far.</param>
    /// <param name="Megabytes">Memory now.</param>
    /// <param name="MostMegabytes">Most memory so far.</param>
    internal sealed record Look(int Done, double Seconds, double ProcessorSeconds, double Megabytes, double MostMegabytes);

    /// <summary>Runs the program to its end.</summary>
    /// <param name="arguments">Its command line.</param>
    /// <param name="seen">Told ten times a second.</param>
    /// <returns>The last look.</returns>
    internal Look Run(IEnumerable<string> arguments, Action<Look> seen)
    {
        var start = program is null
            ? new ProcessStartInfo(Path.Combine(Samples.Root, "lab"), arguments)
            : new ProcessStartInfo(Path.Combine(program, "inscriptionlab"), arguments);
        (start.RedirectStandardOutput, start.RedirectStandardError, start.Environment["OMP_THREAD_LIMIT"]) = (true, true, "1");
        var clock = Stopwatch.StartNew();
        using var process = Process.Start(start) ?? throw new InvalidOperationException($"{start.FileName} could not be started.");
        var (errors, said) = (process.StandardError.ReadToEndAsync(), process.StandardOutput.ReadToEndAsync());
        var last = new Look(Done(), 0, 0, 0, 0);
        while (!process.WaitForExit(Patience))
        {
            if (See(process.Id, clock.Elapsed.TotalSeconds) is { } look)
            {
                last = look;
                seen(look);
            }
        }

        _ = said.GetAwaiter().GetResult();
        return process.ExitCode == 0
            ? last with { Done = Done(), Seconds = clock.Elapsed.TotalSeconds }
            : throw new InvalidOperationException($"{start.FileName} {string.Join(' ', start.ArgumentList)} failed: {errors.GetAwaiter().GetResult().Trim()}");
    }

    /// <summary>Reads what the system says of a running program (man 5 proc).</summary>
    private Look? See(int process, double seconds)
    {
        try
        {
            var folder = string.Create(CultureInfo.InvariantCulture, $"/proc/{process}/");
            var stat = File.ReadAllText(folder + "stat");
            var words = stat[(stat.LastIndexOf(')') + 2)..].Split(' ');
            var status = File.ReadAllLines(folder + "status");
            double? Megabytes(string name) => status.FirstOrDefault(line => line.StartsWith(name, StringComparison.Ordinal)) is { } line
                ? double.Parse(line[name.Length..^2], CultureInfo.InvariantCulture) / KilobytesPerMegabyte
                : null;
            return Megabytes("VmRSS:") is { } now && Megabytes("VmHWM:") is { } most
                ? new Look(Done(), seconds, (double.Parse(words[11], CultureInfo.InvariantCulture) + double.Parse(words[12], CultureInfo.InvariantCulture)) / TicksPerSecond, now, most)
                : null;
        }
        catch (IOException)
        {
            return null;
        }
    }

    /// <summary>Counts the files that are done, reading only what the journal has grown by.</summary>
    private int Done()
    {
        if (!File.Exists(journal))
        {
            return 0;
        }

        // The survey holds its journal for itself; looking into it does no harm, so this program is built without locks on files.
        using var stream = new FileStream(journal, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        stream.Position = _read;
        var bytes = new byte[stream.Length - _read];
        stream.ReadExactly(bytes);
        _read += bytes.Length;
        ReadOnlySpan<byte> text = [.. _rest, .. bytes];
        for (var end = text.IndexOf((byte)'\n'); end >= 0; end = text.IndexOf((byte)'\n'))
        {
            _done += end > SumLength && text[SumLength..end].StartsWith(Finished) ? 1 : 0;
            text = text[(end + 1)..];
        }

        _rest = text.ToArray();
        return _done;
    }
}
