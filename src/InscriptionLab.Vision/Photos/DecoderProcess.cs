using System;
using System.Diagnostics;
using System.IO;
using System.Threading;
using InscriptionLab.Imaging;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Vision.Photos;

/// <summary>
/// Decodes in a process of its own, so that a photo which crashes a native library, or makes it ask for all memory, costs that photo and nothing else.
/// One process serves one photo after another; after a crash the next photo gets a new one. Safe for several threads, which wait for each other.
/// </summary>
public sealed class DecoderProcess : IPictureDecoder, IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly Lock _one = new();
    private readonly string _program;
    private readonly string[] _arguments;
    private Process? _process;

    /// <summary>Makes it; the process starts with the first photo, or with <see cref="Start"/>.</summary>
    /// <param name="program">The program to start: one that calls <see cref="DecoderServer.Serve"/> with its standard input and output.</param>
    /// <param name="arguments">Its arguments.</param>
    public DecoderProcess(string program, params string[] arguments)
    {
        ArgumentException.ThrowIfNullOrEmpty(program);
        _program = program;
        _arguments = arguments;
    }

    /// <summary>Starts the process and does not wait for it, so that it is ready when the first photo is.</summary>
    /// <exception cref="InscriptionLabException">The program cannot be started.</exception>
    public void Start()
    {
        lock (_one)
        {
            _process ??= Started();
        }
    }

    /// <inheritdoc/>
    public ColourImage? Pixels(ReadOnlySpan<byte> file, bool isHeif) => Ask(isHeif ? DecoderMessages.AskHeifPixels : DecoderMessages.AskPixels, file, DecoderMessages.Pixels);

    /// <inheritdoc/>
    public HeifHeader? Header(ReadOnlySpan<byte> file) => Ask(DecoderMessages.AskHeifHeader, file, DecoderMessages.Header);

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (_one)
        {
            End();
        }
    }

    private T? Ask<T>(byte what, ReadOnlySpan<byte> file, Func<Stream, T?> read)
    {
        lock (_one)
        {
            if (_process is { HasExited: true })
            {
                End();
            }

            var process = _process ??= Started();
            using var watch = new Timer(_ => Kill(process), null, Patience, Timeout.InfiniteTimeSpan);
            try
            {
                DecoderMessages.Ask(process.StandardInput.BaseStream, what, file);
                return read(process.StandardOutput.BaseStream);
            }
            catch (Exception ended) when (ended is IOException or OverflowException)
            {
                // The process crashed, ran out of its memory or was ended for its slowness.
                End();
                return default;
            }
        }
    }

    private Process Started()
    {
        var start = new ProcessStartInfo(_program, _arguments) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };

        // Nothing but decoding happens there: no debugger's door, no record of events, no second thread for memory.
        start.Environment["DOTNET_EnableDiagnostics"] = "0";
        start.Environment["DOTNET_EnableEventPipe"] = "0";
        start.Environment["DOTNET_TieredPGO"] = "0";
        start.Environment["DOTNET_gcConcurrent"] = "0";
        try
        {
            var process = Process.Start(start)!;

            // Libraries of pictures write remarks there that say nothing to a user.
            process.ErrorDataReceived += (_, _) => { };
            process.BeginErrorReadLine();
            return process;
        }
        catch (Exception problem) when (problem is System.ComponentModel.Win32Exception or FileNotFoundException)
        {
            throw new InscriptionLabException($"{_program}: the program's own decoder of photos cannot be started; install this version again.", problem);
        }
    }

    private void End()
    {
        if (_process is { } process)
        {
            _process = null;
            Kill(process);
            process.Dispose();
        }
    }

    private static void Kill(Process process)
    {
        try
        {
            process.Kill();
        }
        catch (InvalidOperationException)
        {
            // It has ended already.
        }
    }
}
