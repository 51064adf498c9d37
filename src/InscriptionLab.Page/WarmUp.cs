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

    /// <summary>Begins; the models must not be closed before the task has ended.</summary>
    /// <param name="stages">The stages.</param>
    /// <param name="cancel">Stops between two stages, and within those that look at it.</param>
    internal static Task Begin(ExaminingStages stages, CancellationToken cancel) => Task.Run(() => Run(stages, cancel), CancellationToken.None);

    internal static void Run(ExaminingStages stages, CancellationToken cancel)
    {
        if (!File.Exists(Photo))
        {
            return;
        }

        try
        {
            var photo = stages.Open(Photo);
            _ = new Bench.TilePyramid(photo.Colour).Tile(0, 0, 0);
            if (stages.FindTubes(photo, cancel) is Outcome<System.Collections.Immutable.ImmutableArray<Tube>>.Found { Value: [var tube, ..] })
            {
                var strip = stages.Unroll(photo, tube, cancel);
                cancel.ThrowIfCancellationRequested();
                stages.Judge(stages.Compare(stages.Read(photo, strip, cancel)));
            }
        }
        catch (OperationCanceledException)
        {
            // The program ends before it was warm.
        }
        catch (Exception problem) when (problem is InscriptionLabException or IOException)
        {
            // The first photo of the user meets the same trouble and says so; here nobody asked.
        }
    }
}
