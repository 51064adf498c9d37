using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Threading;
using InscriptionLab.App.Cataloguing;
using InscriptionLab.App.Demo;
using InscriptionLab.App.Measuring;
using InscriptionLab.App.Records;
using InscriptionLab.App.Reports;
using InscriptionLab.Cells;
using InscriptionLab.Measures;
using InscriptionLab.Optics;
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
                var one = measurer.Measure(photo, request.Request, cancel);
                measured.Add(request.OneCell || one.Measurement is null ? one : one with { Optics = Optics(one.Measurement.Circles.ToDictionary(c => c.Role, c => c.Diameter.Value)) });
                Report(MeasurementText.Of(measured[^1]));
            }
            catch (InscriptionLabException problem)
            {
                failed = true;
                terminal.Error.WriteLine(OneLine.Of(problem.Message));
            }
        }

        if (measured.Count > 0)
        {
            JsonTarget.Write(request.Json, measured.Select(one => JsonLines.LineOf(MeasureRecordMaker.Of(one))), terminal.Output);
            var together = request.OneCell ? RepeatedPhotos.Combine([.. measured.Select(one => one.Measurement).OfType<CellMeasurement>()]) : [];
            var all = new MeasuredPhotos(measured.ToImmutable(), together, request.OneCell ? Optics(together.ToDictionary(c => c.Role, c => c.Diameter.Value)) : null);
            Report(MeasurementText.Together(all));
            WriteFolder(all);
            Keep(all.Photos);
        }

        return failed ? ExitCode.Failed : ExitCode.Done;
    }

    private void WriteFolder(MeasuredPhotos measured)
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

    /// <summary>Works out what the glass could do, where the user says more of the telescope and the clear aperture was seen.</summary>
    private OpticsAccount? Optics(Dictionary<CircleRole, Length> diameters)
    {
        if (request.Optics is not { } known || !diameters.TryGetValue(CircleRole.Clear, out var clear))
        {
            return null;
        }

        try
        {
            return OpticsAccount.Of(known(clear, diameters.TryGetValue(CircleRole.Stop, out var stop) ? stop : null));
        }
        catch (ArgumentOutOfRangeException problem)
        {
            throw new InscriptionLabException($"These sizes belong to no telescope: {problem.Message.Split('(', '\n')[0].Trim()}", problem);
        }
    }

    private void Keep(ImmutableArray<PhotoMeasurement> measured)
    {
        if (request.Catalogue is { } catalogue)
        {
            var maker = new EntryMaker(composition.Models, DemoReferences.Load(), composition.Clock);
            Report(CatalogueKeeper.Keep(catalogue, [.. measured.Where(one => one.Measurement is not null).Select(one => maker.Of(one.Photo, one.Measurement!, JsonLines.LineOf(MeasureRecordMaker.Of(one)), null))], null, composition.Clock) + "\n");
        }
    }

    private void Report(string text)
    {
        if (request.Json != JsonTarget.Screen)
        {
            terminal.Output.Write(text);
        }
    }
}
