using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading;
using InscriptionLab.Advice;
using InscriptionLab.App;
using InscriptionLab.App.Demo;
using InscriptionLab.App.Examining;
using InscriptionLab.Assess.Planting;
using InscriptionLab.Assess.Scores;
using InscriptionLab.Assess.Truths;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Assess.Sharpness;

/// <summary>Reads each lettered tube as it is and blurred in steps, and keeps for every letter read how sharp its photo is, how sure the reader says to be, and whether it is right.</summary>
internal sealed class SharpnessAssessor(Composition composition, string folder, TextWriter progress)
{
    /// <summary>Width at half its height over the standard deviation of a bell curve.</summary>
    private const double HalfWidth = 2.3548;

    /// <summary>Standard deviations of the added blur, as shares of the letters' height.</summary>
    private static readonly double[] Blurs = [0, 0.03, 0.05, 0.07, 0.09, 0.12];

    internal IEnumerable<SharpLetter> Run(IEnumerable<TruthPhoto> truths, CancellationToken cancel)
    {
        var stages = composition.Stages(DemoReferences.Load());
        foreach (var (truth, number) in truths.Where(truth => truth.Kind is "tube" && truth.Lines.Length > 0).Select((truth, number) => (truth, number)))
        {
            progress.WriteLine(truth.File);
            var photo = stages.Open(Path.Combine(folder, truth.File));
            var height = 0.0;
            foreach (var blur in Blurs)
            {
                var shown = blur > 0 ? new Planter(height, default).Focus(photo, blur) : photo;
                var seen = new Examiner(stages with { Open = _ => shown }, System.TimeProvider.System).Examine(photo.File, cancel);
                var measures = seen.Advice.Measures;
                if (measures.LetterHeight is not { } tall)
                {
                    break;
                }

                double? outlines = measures.Outlines is Outcome<OutlineSharpness>.Found { Value: var found } ? found.Rise.Pixels : null;
                height = blur > 0 ? height : tall.Pixels;
                foreach (var (stated, right) in Letters(truth, seen.Reading))
                {
                    yield return new SharpLetter(number, measures.SharpBlur.Pixels * HalfWidth / height, outlines / height, stated, right);
                }
            }
        }
    }

    private static IEnumerable<(double Stated, bool Right)> Letters(TruthPhoto truth, Readings.Reading reading)
    {
        var cut = string.Concat(truth.Lines).Replace(" ", string.Empty, System.StringComparison.Ordinal);
        var runes = cut.EnumerateRunes().Select(rune => rune.ToString()).ToList();
        var letters = reading.Lines.SelectMany(line => line.Letters).Where(letter => !letter.IsSpace).ToList();
        return letters.Zip(EditDistance.Pairs(cut, string.Concat(letters.Select(letter => letter.Character))), (letter, at) => (letter.Probability.Value, at >= 0 && runes[at] == letter.Character));
    }
}
