using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.IO;
using System.Linq;

namespace InscriptionLab.Catalogue.Tests.Services;

/// <summary>Runs other programs and waits for them.</summary>
internal static class ChildProcess
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    /// <summary>Runs a program to its end; its output is thrown away, for a server it starts may keep the pipes open.</summary>
    /// <exception cref="InvalidOperationException">The program failed or did not end.</exception>
    internal static void Run(string program, IEnumerable<string> arguments)
    {
        using var process = Process.Start(new ProcessStartInfo("/bin/sh", ["-c", "exec \"$0\" \"$@\" >/dev/null 2>&1", program, .. arguments])
        {
            UseShellExecute = false,
            WorkingDirectory = Path.GetTempPath(),
        })!;
        if (!process.WaitForExit(Patience))
        {
            process.Kill(entireProcessTree: true);
            throw new InvalidOperationException($"{program} did not end.");
        }

        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}.");
        }
    }

    /// <summary>Runs a program to its end and gives what it wrote, both streams together.</summary>
    internal static (int ExitCode, string Output) Output(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true })!;
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output + errors.Result);
    }

    /// <summary>Gives a program's path where it is installed, or null.</summary>
    internal static string? Find(string program) => (Environment.GetEnvironmentVariable("PATH") ?? string.Empty)
        .Split(':')
        .Append("/usr/sbin")
        .Select(folder => Path.Combine(folder, program))
        .FirstOrDefault(File.Exists);
}
