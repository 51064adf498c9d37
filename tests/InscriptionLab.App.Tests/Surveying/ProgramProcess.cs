using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using Xunit;

namespace InscriptionLab.App.Tests.Surveying;

/// <summary>The program as a process of its own, which can be killed.</summary>
internal sealed class ProgramProcess : IDisposable
{
    private readonly Process _process;
    private readonly Task<string> _output;
    private readonly Task<string> _errors;

    private ProgramProcess(Process process)
    {
        _process = process;
        _output = process.StandardOutput.ReadToEndAsync();
        _errors = process.StandardError.ReadToEndAsync();
    }

    /// <summary>Gets the program: beside the tests, or in the folder that the environment names, where a published one starts faster.</summary>
    internal static string Program { get; } = Path.Combine(Environment.GetEnvironmentVariable("INSCRIPTIONLAB_PROGRAM") ?? AppContext.BaseDirectory, "inscriptionlab");

    /// <summary>Gets a value indicating whether the program ended.</summary>
    internal bool HasEnded => _process.HasExited;

    /// <summary>Starts the program.</summary>
    /// <param name="core">The one processor core that it may use; null for all.</param>
    /// <param name="arguments">Its command line.</param>
    internal static ProgramProcess Start(int? core, params IEnumerable<string> arguments)
    {
        return core is { } one ? Under(["taskset", "-c", FormattableString.Invariant($"{one}"), Program, .. arguments]) : Under([Program, .. arguments]);
    }

    /// <summary>Starts a command line that ends in the program: under a shell or a tool that takes something away from it.</summary>
    internal static ProgramProcess Under(IReadOnlyList<string> command)
    {
        var start = new ProcessStartInfo(command[0], command.Skip(1));
        (start.RedirectStandardOutput, start.RedirectStandardError) = (true, true);
        start.Environment["OMP_THREAD_LIMIT"] = "1";
        return new ProgramProcess(Process.Start(start)!);
    }

    /// <summary>Runs the program to its end and gives what it wrote.</summary>
    internal static async Task<string> RunAsync(params string[] arguments)
    {
        using var program = Start(null, arguments);
        return await program.EndAsync();
    }

    /// <summary>Waits for the end and gives what it wrote.</summary>
    internal async Task<string> EndAsync()
    {
        await _process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.True(_process.ExitCode == 0, await _errors);
        return await _output;
    }

    /// <summary>Waits for the end and gives exit code and what it wrote.</summary>
    internal async Task<(int Code, string Output, string[] Complaints)> OutcomeAsync()
    {
        await _process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (_process.ExitCode, await _output, [.. (await _errors).Split('\n').Where(line => line.Length > 0)]);
    }

    /// <summary>Kills it as <c>kill -9</c> does.</summary>
    internal void Kill()
    {
        _process.Kill(entireProcessTree: true);
        _process.WaitForExit();
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            Kill();
        }

        _process.Dispose();
    }
}
