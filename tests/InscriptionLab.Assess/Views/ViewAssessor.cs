using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading;
using InscriptionLab.App;
using InscriptionLab.App.Demo;
using InscriptionLab.App.Examining;
using InscriptionLab.Assess.Scores;
using InscriptionLab.Assess.Truths;
using InscriptionLab.Imaging;
using InscriptionLab.Photos;

namespace InscriptionLab.Assess.Views;

/// <summary>Turns every lettered tube photo of a folder upside down, mirrors it, and does both; runs the whole examination on each and looks at what is said of the way it stands.</summary>
internal sealed class ViewAssessor(Composition composition, string folder, TextWriter progress)
{
    internal IEnumerable<ViewCase> Run(IEnumerable<TruthPhoto> truths, CancellationToken cancel)
    {
        var stages = composition.Stages(DemoReferences.Load());
        foreach (var truth in truths.Where(truth => truth.Kind == "tube" && truth.Lines.Length > 0))
        {
            progress.WriteLine(truth.File);
            var photo = stages.Open(Path.Combine(folder, truth.File));
            foreach (var (turned, mirrored) in new[] { (false, false), (true, false), (false, true), (true, true) })
            {
                var shown = Flipped(photo, leftRight: turned ^ mirrored, topBottom: turned);
                var reading = new Examiner(stages with { Open = _ => shown }, System.TimeProvider.System).Examine(photo.File, cancel).Reading;
                var score = TextScorer.Score(truth, reading.Lines.Select(line => line.Text), hideHidden: false);
                yield return new ViewCase(
                    truth.File,
                    truth.UpsideDown ^ turned,
                    truth.Mirrored ^ mirrored,
                    truth.TextDirection == "around",
                    reading.Lines.Length,
                    reading.Lines.Count(line => line.Line.Direction.UpsideDown),
                    reading.Lines.Count(line => line.Line.Direction.Mirrored),
                    score.Edits,
                    score.Letters);
            }
        }
    }

    private static Photo Flipped(Photo photo, bool leftRight, bool topBottom)
    {
        var (width, height) = (photo.Gray.Width, photo.Gray.Height);
        var (gray, colour) = (new byte[width * height], new byte[width * height * ColourImage.Channels]);
        for (var i = 0; i < gray.Length; i++)
        {
            var (x, y) = (i % width, i / width);
            var from = ((topBottom ? height - 1 - y : y) * width) + (leftRight ? width - 1 - x : x);
            gray[i] = photo.Gray.Pixels[from];
            for (var channel = 0; channel < ColourImage.Channels; channel++)
            {
                colour[(i * ColourImage.Channels) + channel] = photo.Colour.Pixels[(from * ColourImage.Channels) + channel];
            }
        }

        return photo with { Gray = new GrayImage(width, height, gray), Colour = new ColourImage(width, height, colour) };
    }
}
