using System;
using System.IO;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.App.Examining;
using InscriptionLab.Outcomes;
using InscriptionLab.Tubes;

namespace InscriptionLab.Page;

/// <summary>Runs every stage once on a demonstration photo while the page opens: models are loaded and code is compiled before the first photo comes.</summary>
internal static class WarmUp
{
    private static readonly string Photo = Path.Combine(AppContext.BaseDirectory, "demonstration", "roman-transposed.jpg");

    internal static void Begin(ExaminingStages stages) => _ = Task.Run(() => Run(stages));

    internal static void Run(ExaminingStages stages)
    {
        if (!File.Exists(Photo))
        {
            return;
        }

        try
        {
            var photo = stages.Open(Photo);
            _ = new Bench.TilePyramid(photo.Colour).Tile(0, 0, 0);
            if (stages.FindTubes(photo, CancellationToken.None) is Outcome<System.Collections.Immutable.ImmutableArray<Tube>>.Found { Value: [var tube, ..] })
            {
                stages.Judge(stages.Compare(stages.Read(photo, stages.Unroll(photo, tube, CancellationToken.None), CancellationToken.None)));
            }
        }
        catch (Exception problem) when (problem is InscriptionLabException or IOException)
        {
            // The first photo of the user meets the same trouble and says so; here nobody asked.
        }
    }
}
