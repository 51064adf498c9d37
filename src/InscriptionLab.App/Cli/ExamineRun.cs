using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Threading;
using InscriptionLab.App.Cataloguing;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Records;
using InscriptionLab.App.Reports;
using InscriptionLab.Evidence;
using InscriptionLab.Outcomes;
using InscriptionLab.References;

namespace InscriptionLab.App.Cli;

/// <summary>One run of <c>examine</c>: each photo, then the photos together, then the files. A photo that fails costs one sentence and no other photo.</summary>
internal sealed class ExamineRun(Composition composition, Terminal terminal, ExamineRequest request)
{
    private bool _failed;

    /// <summary>Runs.</summary>
    /// <returns>An <see cref="ExitCode"/>.</returns>
    internal int Run(CancellationToken cancel)
    {
        var references = ReferenceSource.Load(request.Reference);
        foreach (var warning in references.Warnings)
        {
            terminal.Error.WriteLine(warning);
        }

        var known = PieceFacts.Load(request.Construction, request.Checklist, request.Prior);
        var examiner = composition.Examiner(references.List, known);
        var examined = Consistent(Examine(examiner, references.List, known, cancel), examiner);
        if (examined.Length > 0)
        {
            var sets = Together(examined, references.List, known, cancel);
            Report(TextReport.OfRequests(Requests.Of(examined, sets)));
            JsonTarget.Write(request.Json, Lines(examined, sets), terminal.Output);
            WriteFolder(examined, sets, references.List);
            Keep(examined, sets, references.List, known);
        }

        return _failed ? ExitCode.Failed : ExitCode.Done;
    }

    private ImmutableArray<Examination> Examine(Examiner finding, ReferenceList list, Circumstances known, CancellationToken cancel)
    {
        var examined = ImmutableArray.CreateBuilder<Examination>();
        for (var i = 0; i < request.Photos.Length; i++)
        {
            try
            {
                var examiner = request.RingOf(i) is { } ring ? composition.Examiner(list, ring.Rim, ring.Opening, known)
                    : request.EdgesOf(i) is { } edges ? composition.Examiner(list, edges.First, edges.Second, known)
                    : finding;
                var examination = examiner.Examine(request.Photos[i], cancel);
                examined.Add(examination);
                Report(TextReport.Of(examination));
            }
            catch (InscriptionLabException problem)
            {
                _failed = true;
                terminal.Error.WriteLine(OneLine.Of(problem.Message));
            }
        }

        return examined.ToImmutable();
    }

    private ImmutableArray<Examination> Consistent(ImmutableArray<Examination> examined, Examiner examiner)
    {
        var houses = PhotosOfOneObject.Houses(examined);
        if (request.IsSeparate || houses.Length < 2)
        {
            return examined;
        }

        Report(PhotosOfOneObject.Sentence(houses) + "\n\n");
        return PhotosOfOneObject.Together(examined, examiner);
    }

    private ImmutableArray<SetExamination> Together(ImmutableArray<Examination> examined, ReferenceList list, Circumstances known, CancellationToken cancel)
    {
        if (request.IsSeparate)
        {
            return [];
        }

        var sets = composition.SetExaminer(list, known, request.StatedLamps is { } stated ? photo => stated.GetValueOrDefault(photo.File) : null).Examine(examined, request.Together, cancel);
        foreach (var set in sets)
        {
            Report(TextReport.Of(set));
        }

        if (sets.IsEmpty && request.Together is { } kind)
        {
            _failed = true;
            terminal.Error.WriteLine($"--as {Words.For(kind)} needs at least two different photos that can be used; the photos were examined one by one.");
        }

        return sets;
    }

    private static IEnumerable<string> Lines(ImmutableArray<Examination> examined, ImmutableArray<SetExamination> sets)
    {
        return [.. examined.Select(examination => JsonLines.LineOf(RecordMaker.Of(examination))), .. sets.Select(set => JsonLines.LineOf(RecordMaker.Of(set)))];
    }

    private void WriteFolder(ImmutableArray<Examination> examined, ImmutableArray<SetExamination> sets, ReferenceList list)
    {
        var folder = request.Out ?? ExaminationFolder.NameFor(request.Photos[0]);
        var provenance = new Provenance(ProgramFacts.NameAndVersion, composition.Clock.GetLocalNow(), list.Name, list.Sha256, composition.Models, request.Asked, composition.Options);
        try
        {
            ExaminationFolder.Write(folder, examined, sets, provenance);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new InscriptionLabException($"{folder}: the examination cannot be written there; name another folder with --out.", problem);
        }

        Report($"written to {Path.Combine(folder, ExaminationFolder.Page)}\n\n{string.Join('\n', Cautions.Sentences)}\n");
    }

    private void Keep(ImmutableArray<Examination> examined, ImmutableArray<SetExamination> sets, ReferenceList list, Circumstances known)
    {
        if (request.Catalogue is not { } catalogue)
        {
            return;
        }

        var maker = new EntryMaker(composition.Models, list, composition.Clock);
        Report(CatalogueKeeper.Keep(catalogue, [.. examined.Select(examination => maker.Of(examination, null, null)), .. sets.Select(set => maker.Of(set, null))], known.Construction, composition.Clock) + "\n");
    }

    private void Report(string text)
    {
        if (request.Json != JsonTarget.Screen)
        {
            terminal.Output.Write(text);
        }
    }
}
