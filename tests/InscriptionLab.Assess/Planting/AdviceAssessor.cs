using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading;
using InscriptionLab.App;
using InscriptionLab.App.Demo;
using InscriptionLab.App.Examining;
using InscriptionLab.Assess.Truths;
using InscriptionLab.Photos;

namespace InscriptionLab.Assess.Planting;

/// <summary>Plants faults in photos of a folder, draws lettering under a lamp on the wrong side, runs the whole examination on each, and holds the advice against what was planted.</summary>
internal sealed class AdviceAssessor(Composition composition, string folder, TextWriter progress)
{
    /// <summary>Photos whose letters are smaller than this are limited before anything is planted.</summary>
    private const double LeastHeight = 20;

    internal AdviceTable Run(IEnumerable<TruthPhoto> truths, CancellationToken cancel)
    {
        var stages = composition.Stages(DemoReferences.Load());
        var table = new AdviceTable();
        foreach (var truth in truths.Where(truth => truth.Kind is "tube" && truth.XHeight >= LeastHeight))
        {
            var photo = stages.Open(Path.Combine(folder, truth.File));
            var untouched = Examine(stages, photo, cancel);
            if (untouched.Reading.Lines.IsEmpty)
            {
                continue;
            }

            if (untouched.Advice.Worst is { } own)
            {
                // A second fault in a photo that has one of its own would prove nothing.
                table.Add(null, untouched.Advice);
                progress.WriteLine($"{truth.File}: untouched: {own}, nothing planted");
                continue;
            }

            foreach (var one in PlantedCases.Of(untouched.Advice.Measures.LetterHeight!.Value.Pixels, LetteredPart.MiddleOf(untouched.Reading)!.Value))
            {
                var advice = one.Fault is null ? untouched.Advice : Examine(stages, one.Spoil(photo), cancel).Advice;
                table.Add(one.Fault, advice);
                progress.WriteLine($"{truth.File}: {one.Name}: {string.Join(", ", advice.Limits.Select(limit => limit.Kind))} of {advice.Measures}");
            }
        }

        foreach (var (name, fault, photo) in LampCases.All())
        {
            var advice = Examine(stages, photo, cancel).Advice;
            table.Add(fault, advice);
            progress.WriteLine($"{name}: {string.Join(", ", advice.Limits.Select(limit => limit.Kind))} of {advice.Measures}");
        }

        return table;
    }

    private static Examination Examine(ExaminingStages stages, Photo photo, CancellationToken cancel) =>
        new Examiner(stages with { Open = _ => photo }, System.TimeProvider.System).Examine(photo.File, cancel);
}
