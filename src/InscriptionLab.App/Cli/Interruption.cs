using System;
using System.Threading;

namespace InscriptionLab.App.Cli;

/// <summary>Turns Ctrl-C into a cancellation, so that a run stops between two stages and not in the middle of a file.</summary>
internal sealed class Interruption : IDisposable
{
    private readonly CancellationTokenSource _source = new();

    internal Interruption() => Console.CancelKeyPress += OnCancelKey;

    internal CancellationToken Token => _source.Token;

    public void Dispose()
    {
        Console.CancelKeyPress -= OnCancelKey;
        _source.Dispose();
    }

    private void OnCancelKey(object? sender, ConsoleCancelEventArgs arguments)
    {
        arguments.Cancel = true;
        _source.Cancel();
    }
}
