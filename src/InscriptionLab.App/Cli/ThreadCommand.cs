using System;
using System.CommandLine;
using System.Globalization;
using System.Linq;
using System.Threading;
using InscriptionLab.App.Reports;
using InscriptionLab.Cells;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Threads;
using InscriptionLab.Vision.Threads;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Cli;

/// <summary>The command <c>thread</c>: pitch of a thread from a photo of its side.</summary>
internal sealed class ThreadCommand(Composition composition, Terminal terminal)
{
    internal const string Page = """
        ./lab thread PHOTO --along X1,Y1,X2,Y2 [--scale KIND:SIZE] [--plane-offset MM]

        Measures the pitch of a screw thread photographed from the side beside a scale, and lays it beside
        the Whitworth, ISO metric and microscope objective series. The pitch is never moved to a standard
        one; where the families lie too close, the answer is that it cannot tell. Do not force a part that
        will not unscrew: no pliers, no heat, no oil on lacquer.

          --along X1,Y1,X2,Y2  two points of the photo, in pixels, of a line over the thread parallel to
                               its axis
          --scale KIND:SIZE    as for ./lab measure
          --plane-offset MM    how many millimetres the crests lie above the scale (0 = level)

        Exit code: 0 done, 1 the photo could not be used, 2 the command was not understood.

        """;

    private static readonly double LargestOffset = MeasureRequest.LargestPlaneOffset.Millimetres;

    private readonly Argument<string> _photo = new("PHOTO");
    private readonly Option<string> _along = new("--along") { Required = true };
    private readonly Option<string?> _scale = new("--scale");
    private readonly Option<string?> _offset = new("--plane-offset");

    internal Command ToCommand(Func<CancellationToken> cancel)
    {
        var command = new Command("thread") { _photo, _along, _scale, _offset };
        command.SetAction(parsed => Run(parsed, cancel()));
        return command;
    }

    private int Run(ParseResult parsed, CancellationToken cancel)
    {
        ScaleRequest? scale = null;
        if (parsed.GetValue(_scale) is { } scaleText && !ScaleRequest.TryParse(scaleText, out scale, out var problem))
        {
            terminal.Error.WriteLine(problem);
            return ExitCode.Misused;
        }

        var along = Numbers(parsed.GetRequiredValue(_along), 4);
        if (along is null || (along[0] == along[2] && along[1] == along[3]))
        {
            terminal.Error.WriteLine($"--along needs two different points as four numbers, for example 210,340,580,352, not {parsed.GetRequiredValue(_along)}.");
            return ExitCode.Misused;
        }

        Length? offset = null;
        if (parsed.GetValue(_offset) is { } offsetText)
        {
            if (Numbers(offsetText, 1) is not { } height || Math.Abs(height[0]) > LargestOffset)
            {
                terminal.Error.WriteLine($"--plane-offset needs a number of millimetres between -{LargestOffset:0} and {LargestOffset:0}, for example --plane-offset 3, not {offsetText}.");
                return ExitCode.Misused;
            }

            offset = Length.FromMillimetres(height[0]);
        }

        var photo = composition.Open(parsed.GetRequiredValue(_photo));
        var line = new PixelSegment(new PixelPoint(along[0], along[1]), new PixelPoint(along[2], along[3]));
        switch (new ThreadMeasurer().Run(photo, line, new MeasureRequest(scale, offset), cancel))
        {
            case Outcome<ThreadMeasurement>.Found found:
                Write(found.Value);
                return ExitCode.Done;
            case Outcome<ThreadMeasurement>.Declined { Refusal: var refusal }:
                throw new InscriptionLabException($"{photo.File}: {refusal.Sentence} {refusal.Remedy}");
            default:
                throw new InvalidOperationException("An outcome is found or declined.");
        }
    }

    private void Write(ThreadMeasurement thread)
    {
        var pitch = thread.Pitch;
        var turns = ThreadSeries.TurnsOfPitch(pitch.Value.Millimetres);
        terminal.Output.WriteLine("  pitch      " + GumStatement.Of(pitch, thread.Budget.EffectiveDegreesOfFreedom).Replace("D =", "P =", StringComparison.Ordinal) + ".");
        terminal.Output.WriteLine(Invariant($"             = {turns:0.00} turns to the inch, from {thread.Crests} crests"));
        foreach (var row in thread.Budget.Rows.OrderByDescending(row => row.Contribution))
        {
            terminal.Output.WriteLine(Invariant($"             {row.Contribution:0.00000} mm  {row.Source} ({row.Basis})"));
        }

        terminal.Output.WriteLine("  series     " + thread.Comparison.Sentence);
        foreach (var warning in thread.Warnings)
        {
            terminal.Output.WriteLine("  mind       " + warning);
        }

        terminal.Output.WriteLine("  caution    " + Cautions.Sentences[2]);
    }

    private static double[]? Numbers(string text, int count)
    {
        var numbers = text.Split(',').Select(part => double.TryParse(part, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : double.NaN).ToArray();
        return numbers.Length == count && numbers.All(double.IsFinite) ? numbers : null;
    }
}
