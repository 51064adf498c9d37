using System;
using System.Diagnostics;
using System.Globalization;
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

    /// <summary>Gets how long a photo may take.</summary>
    /// <value>60 s: a thousand times what a photo of 12 megapixels takes on an idle machine.</value>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(60);

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
            var watch = new Watch(process);
            using var timer = new Timer(_ => watch.Fire(), null, Patience, Timeout.InfiniteTimeSpan);
            try
            {
                DecoderMessages.Ask(process.StandardInput.BaseStream, what, file);
                var answer = read(process.StandardOutput.BaseStream);
                if (!watch.Stop())
                {
                    // It was ended just after it had answered.
                    End();
                }

                return answer;
            }
            catch (Exception ended) when (ended is IOException or OverflowException)
            {
                End();
                return watch.Stop()
                    ? default // The process crashed or ran out of its memory.
                    : throw new InscriptionLabException(string.Create(CultureInfo.InvariantCulture, $"The photo took longer than {Patience.TotalSeconds:0.#} seconds to decode; try again when the machine has less to do."), ended) { MayPass = true };
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

    /// <summary>Ends a process unless it is stopped first; whoever comes second is told.</summary>
    private sealed class Watch(Process process)
    {
        private int _isOver;

        internal void Fire()
        {
            if (Stop())
            {
                Kill(process);
            }
        }

        /// <summary>Stops it.</summary>
        /// <returns>False where it has fired.</returns>
        internal bool Stop() => Interlocked.Exchange(ref _isOver, 1) == 0;
    }
}
