using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.IO;
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

    /// <summary>Gets a value indicating whether the program ended.</summary>
    internal bool HasEnded => _process.HasExited;

    /// <summary>Starts the program.</summary>
    /// <param name="core">The one processor core that it may use; null for all.</param>
    /// <param name="arguments">Its command line.</param>
    internal static ProgramProcess Start(int? core, params IEnumerable<string> arguments)
    {
        var program = Path.Combine(AppContext.BaseDirectory, "inscriptionlab");
        var start = core is { } one
            ? new ProcessStartInfo("taskset", ["-c", FormattableString.Invariant($"{one}"), program, .. arguments])
            : new ProcessStartInfo(program, arguments);
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
