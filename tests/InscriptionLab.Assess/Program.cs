using System;
using System.Collections.Immutable;
using System.IO;
using System.Threading;
using InscriptionLab.App;
using InscriptionLab.Assess.Findings;
using InscriptionLab.Assess.Lamps;
using InscriptionLab.Assess.Marks;
using InscriptionLab.Assess.Planting;
using InscriptionLab.Assess.Readers;
using InscriptionLab.Assess.Reports;
using InscriptionLab.Assess.Sharpness;
using InscriptionLab.Assess.Truths;
using InscriptionLab.Assess.Tubes;
using InscriptionLab.Assess.Turns;
using InscriptionLab.Assess.Views;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Assess;

/// <summary>How well the program does on photos whose truth is known.</summary>
internal static class Program
{
    private const int Failed = 1;
    private const int Misused = 2;

    private static int Main(string[] arguments)
    {
        if (AssessArguments.Parse(arguments, out var problem) is not { } asked)
        {
            Console.Error.WriteLine(problem);
            return Misused;
        }

        try
        {
            return Run(asked);
        }
        catch (InscriptionLabException wrong)
        {
            Console.Error.WriteLine(wrong.Message);
            return Failed;
        }
    }

    private static int Run(AssessArguments asked)
    {
        var truths = TruthFolder.Read(asked.Folder);
        if (asked.Look != AssessLook.Whole)
        {
            using var composition = new Composition();
            Console.Out.Write(Table(asked, composition, truths));
            return 0;
        }

        var predictions = asked.Predictions is { } file ? PredictionFile.Read(file) : Predict(asked.Folder, truths);
        var assessment = new Assessor(truths, predictions).Assess();
        var table = MarkdownReport.Of(assessment);
        Console.Out.Write(table);
        if (asked.Json is { } json)
        {
            File.WriteAllText(json, JsonReport.Of(assessment) + "\n");
        }

        if (asked.Readme is { } readme)
        {
            MarkedPassage.Write(readme, table);
        }

        if (asked.Keep is { } keep)
        {
            PredictionFile.Write(keep, predictions);
        }

        if (asked.Golden is { } golden && GoldenRecords.Differences(PredictionFile.Lines(PredictionFile.Read(golden)), PredictionFile.Lines(predictions)) is { Length: > 0 } differences)
        {
            Console.Error.WriteLine(string.Join('\n', differences));
            return Failed;
        }

        return assessment.Failures.Length > 0 ? Failed : 0;
    }

    private static string Table(AssessArguments asked, Composition composition, ImmutableArray<TruthPhoto> truths)
    {
        var (folder, progress, cancel) = (asked.Folder, Console.Error, CancellationToken.None);
        return asked.Look switch
        {
            AssessLook.Advice => new AdviceAssessor(composition, folder, progress).Run(truths, cancel).ToMarkdown(),
            AssessLook.Tubes => TubeReport.Of([.. new TubeAssessor(composition, folder, asked.Pictures).Run(truths, cancel)]),
            AssessLook.Reader => new ReaderAssessor(composition, folder, progress).Run(truths, cancel).ToMarkdown(),
            AssessLook.Findings => new FindingAssessor(composition, folder, progress).Run(truths, cancel).ToMarkdown(),
            AssessLook.Turns => TurnReport.Of([.. new TurnAssessor(composition, folder, progress).Run(truths, cancel)]),
            AssessLook.Views => ViewReport.Of([.. new ViewAssessor(composition, folder, progress).Run(truths, cancel)]),
            AssessLook.Lamps => LampReport.Of([.. new LampAssessor(composition, folder).Run(truths, cancel)]),
            AssessLook.Likeness => MarkReport.Of([.. new MarkAssessor(composition, folder, progress).Run(truths, cancel)]),
            AssessLook.Sharpness => SharpnessReport.Of([.. new SharpnessAssessor(composition, folder, progress).Run(truths, cancel)]),
            _ => throw new InvalidOperationException($"{asked.Look} has no table of its own."),
        };
    }

    private static Predictions Predict(string folder, ImmutableArray<TruthPhoto> truths)
    {
        using var composition = new Composition();
        return new Predictor(composition, folder, Console.Error).Predict(truths, CancellationToken.None);
    }
}
