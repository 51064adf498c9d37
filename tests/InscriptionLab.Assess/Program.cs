using System;
using System.IO;
using System.Threading;
using InscriptionLab.App;
using InscriptionLab.Assess.Findings;
using InscriptionLab.Assess.Planting;
using InscriptionLab.Assess.Readers;
using InscriptionLab.Assess.Reports;
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
        if (asked.Advice)
        {
            using var planted = new Composition();
            Console.Out.Write(new AdviceAssessor(planted, asked.Folder, Console.Error).Run(truths, CancellationToken.None).ToMarkdown());
            return 0;
        }

        if (asked.Tubes)
        {
            using var looking = new Composition();
            Console.Out.Write(TubeReport.Of([.. new TubeAssessor(looking, asked.Folder, asked.Pictures).Run(truths, CancellationToken.None)]));
            return 0;
        }

        if (asked.Turns)
        {
            using var turning = new Composition();
            Console.Out.Write(TurnReport.Of([.. new TurnAssessor(turning, asked.Folder, Console.Error).Run(truths, CancellationToken.None)]));
            return 0;
        }

        if (asked.Views)
        {
            using var viewing = new Composition();
            Console.Out.Write(ViewReport.Of([.. new ViewAssessor(viewing, asked.Folder, Console.Error).Run(truths, CancellationToken.None)]));
            return 0;
        }

        if (asked.Reader)
        {
            using var reading = new Composition();
            Console.Out.Write(new ReaderAssessor(reading, asked.Folder, Console.Error).Run(truths, CancellationToken.None).ToMarkdown());
            return 0;
        }

        if (asked.Findings)
        {
            using var judging = new Composition();
            Console.Out.Write(new FindingAssessor(judging, asked.Folder, Console.Error).Run(truths, CancellationToken.None).ToMarkdown());
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

        return assessment.Failures.Length > 0 ? Failed : 0;
    }

    private static Predictions Predict(string folder, System.Collections.Immutable.ImmutableArray<TruthPhoto> truths)
    {
        using var composition = new Composition();
        return new Predictor(composition, folder, Console.Error).Predict(truths, CancellationToken.None);
    }
}
