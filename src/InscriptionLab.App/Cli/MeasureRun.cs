using System;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Threading;
using InscriptionLab.App.Measuring;
using InscriptionLab.App.Records;
using InscriptionLab.App.Reports;
using InscriptionLab.Outcomes;

namespace InscriptionLab.App.Cli;

/// <summary>One run of <c>measure</c>. A photo that fails costs one sentence and no other photo.</summary>
internal sealed class MeasureRun(Composition composition, Terminal terminal, MeasureRunRequest request)
{
    /// <summary>Runs.</summary>
    /// <returns>An <see cref="ExitCode"/>.</returns>
    internal int Run(CancellationToken cancel)
    {
        var failed = false;
        var measured = ImmutableArray.CreateBuilder<PhotoMeasurement>();
        var measurer = composition.Measurer(request.Camera is { } camera ? CalibrationFile.Read(camera) : null);
        foreach (var photo in request.Photos)
        {
            try
            {
                measured.Add(measurer.Measure(photo, request.Request, cancel));
                Report(MeasurementText.Of(measured[^1]));
            }
            catch (InscriptionLabException problem)
            {
                failed = true;
                terminal.Error.WriteLine(problem.Message);
            }
        }

        if (measured.Count > 0)
        {
            JsonTarget.Write(request.Json, measured.Select(one => JsonLines.LineOf(MeasureRecordMaker.Of(one))), terminal.Output);
            WriteFolder(measured.ToImmutable());
        }

        return failed ? ExitCode.Failed : ExitCode.Done;
    }

    private void WriteFolder(ImmutableArray<PhotoMeasurement> measured)
    {
        var folder = request.Out ?? MeasurementFolder.NameFor(request.Photos[0]);
        try
        {
            MeasurementFolder.Write(folder, measured, new Provenance(ProgramFacts.NameAndVersion, composition.Clock.GetLocalNow(), string.Empty, string.Empty, [], request.Asked, composition.MeasuringOptions));
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new InscriptionLabException($"{folder}: the measurement cannot be written there; name another folder with --out.", problem);
        }

        Report($"written to {Path.Combine(folder, MeasurementFolder.Page)}\n");
    }

    private void Report(string text)
    {
        if (request.Json != JsonTarget.Screen)
        {
            terminal.Output.Write(text);
        }
    }
}
