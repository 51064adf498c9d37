using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading;
using InscriptionLab.Advice;
using InscriptionLab.App;
using InscriptionLab.App.Demo;
using InscriptionLab.App.Examining;
using InscriptionLab.Assess.Truths;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Assess.Lamps;

/// <summary>Examines every lettered photo whose truth tells its light, and holds the side from which the light is said to come against it.</summary>
internal sealed class LampAssessor(Composition composition, string folder)
{
    /// <summary>Gives the cases, photo after photo; photos in which nothing was read have no side told.</summary>
    internal IEnumerable<LampCase> Run(IEnumerable<TruthPhoto> truths, CancellationToken cancel)
    {
        var examiner = new Examiner(composition.Stages(DemoReferences.Load()), TimeProvider.System);
        foreach (var truth in truths.Where(truth => truth is { Light: not null, Letters.Length: > 0 }))
        {
            var examination = examiner.Examine(Path.Combine(folder, truth.File), cancel);
            var known = LampTruth.Of(truth);
            var told = examination.Advice.Measures.Light is Outcome<LampSight>.Found found ? found.Value : null;
            yield return new LampCase(truth.File, truth.Light!.Mode, known?.Height.Degrees ?? double.NaN, known?.InPhoto.Degrees ?? double.NaN, told?.InPhoto.Degrees ?? double.NaN, told?.Uncertainty.Degrees ?? double.NaN);
        }
    }
}
