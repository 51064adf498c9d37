using System;
using System.Collections.Concurrent;
using System.Collections.Generic;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.App.Measuring;
using InscriptionLab.App.Reports;
using InscriptionLab.Cells;
using InscriptionLab.Outcomes;
using InscriptionLab.Page.Bench;

namespace InscriptionLab.Page.Measuring;

/// <summary>Measures photos of the bench, one after the other, and keeps what each gave, so that circles can be moved on it by hand.</summary>
/// <param name="measurer">The stages of a measurement; null where this page has none.</param>
internal sealed class MeasuringTable(Measurer? measurer) : IDisposable
{
    private readonly SemaphoreSlim _one = new(1);
    private readonly ConcurrentDictionary<string, MeasuredCell> _kept = new(StringComparer.Ordinal);

    private readonly ConcurrentDictionary<string, KeptCircles> _byHand = new(StringComparer.Ordinal);

    public void Dispose() => _one.Dispose();

    /// <summary>Gives what the photo gave when it was last measured; null where it was not.</summary>
    internal MeasuredCell? Of(string photo) => _kept.GetValueOrDefault(photo);

    /// <summary>Gives the circles that a person kept; null where nobody did.</summary>
    internal KeptCircles? KeptOf(string photo) => _byHand.GetValueOrDefault(photo);

    /// <summary>Keeps circles that a person placed; none to go back to those that the program found.</summary>
    internal void Keep(string photo, KeptCircles circles) => _byHand[photo] = circles;

    internal async Task<MeasuredCell> Measure(PiecePhoto photo, MeasureRequest request, CancellationToken cancel)
    {
        if (measurer is null)
        {
            throw new InscriptionLabException("This page cannot measure.");
        }

        await _one.WaitAsync(cancel);
        try
        {
            var measured = await Task.Run(() => measurer.Measure(photo.File, request, cancel), cancel);
            return _kept[photo.Id] = new MeasuredCell(measured.Measurement, CommandWords.Without(measured.Warnings));
        }
        catch (InscriptionLabException problem)
        {
            throw new InscriptionLabException(problem.Message.Replace(photo.File, photo.Name, StringComparison.Ordinal), problem);
        }
        finally
        {
            _one.Release();
        }
    }
}
