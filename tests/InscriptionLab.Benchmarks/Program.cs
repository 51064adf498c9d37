using System;
using System.Linq;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace InscriptionLab.Benchmarks;

/// <summary><c>./lab bench</c>: times of the stages, and the program beside plain text recognition on the same photos.</summary>
internal static class Program
{
    private const int Misused = 2;

    private static int Main(string[] arguments)
    {
        switch (arguments.FirstOrDefault() ?? "all")
        {
            case "search":
                BenchmarkRunner.Run<SearchBenchmarks>(ManualConfig.Create(DefaultConfig.Instance).AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance)));
                return 0;
            case "likeness":
                LikenessAtScale.Run(LikenessBenchmarks.Marks, Console.Out);
                BenchmarkRunner.Run<LikenessBenchmarks>(ManualConfig.Create(DefaultConfig.Instance).AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance)));
                return 0;
            case "survey":
                return SurveyAtScale.Run(arguments[1..], Console.Out);
            case "stages":
                Stages();
                return 0;
            case "sizes":
                return SizeTable.Run(Console.Out);
            case "beside":
                return SideBySide.Run(Console.Out);
            case "all":
                Stages();
                return SideBySide.Run(Console.Out);
            default:
                Console.Error.WriteLine($"bench knows stages, sizes, search, likeness, survey and beside, not {arguments[0]}; without a word it runs stages and beside.");
                return Misused;
        }
    }

    private static void Stages()
    {
        // In this process: the natives lie beside it, and a project made on the fly would not find them.
        var job = Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance);
        var config = ManualConfig.Create(DefaultConfig.Instance).AddJob(job);
        BenchmarkRunner.Run<StageBenchmarks>(config);
        BenchmarkRunner.Run<SearchBenchmarks>(config);
    }
}
