using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading;
using InscriptionLab.App;
using InscriptionLab.App.Demo;
using InscriptionLab.Assess.Scores;
using InscriptionLab.Assess.Truths;
using InscriptionLab.Likeness;

namespace InscriptionLab.Assess.Marks;

/// <summary>Finds and lays flat every line of lettering in the photos as the program does, and tells which line of the truth each one is.</summary>
internal sealed class MarkAssessor(Composition composition, string folder, TextWriter progress)
{
    /// <summary>A line that was found is one of the truth when at most this share of the letters differs; what is read of hidden or mirrored lettering may be worse and is left out.</summary>
    private const double MostDiffering = 0.5;

    private readonly MarkEmbedder _embedder = new(new MarkEmbedderOptions());

    internal IEnumerable<MarkCase> Run(IEnumerable<TruthPhoto> truths, CancellationToken cancel)
    {
        var examiner = composition.Examiner(DemoReferences.Load());
        foreach (var truth in truths.Where(truth => truth.Lines.Length > 0))
        {
            progress.WriteLine(truth.File);
            var reading = examiner.Examine(Path.Combine(folder, truth.File), cancel).Reading;
            foreach (var line in reading.Lines)
            {
                if (LineOf(truth, line.Text) is { } cut)
                {
                    yield return new MarkCase(truth.File, truth.Set ?? truth.File, cut, truth.Lines[cut], _embedder.Embed(line.Line.Crop));
                }
            }
        }
    }

    private static int? LineOf(TruthPhoto truth, string read)
    {
        var (share, line) = truth.Lines
            .Select((cut, index) => (Share: (double)EditDistance.Between(cut, read) / Math.Max(cut.Length, read.Length), Index: index))
            .Min();
        return share <= MostDiffering ? line : null;
    }
}
