using System;
using System.IO;
using System.Linq;
using System.Text;
using System.Threading;
using InscriptionLab.App;
using InscriptionLab.App.Cli;
using InscriptionLab.App.Examining;
using InscriptionLab.Cataloguing;
using InscriptionLab.Cells;
using InscriptionLab.Evidence;
using InscriptionLab.Optics;

namespace InscriptionLab.Fuzz;

/// <summary>Words of a command line.</summary>
internal static class ArgumentTargets
{
    private static readonly Composition Parts = new();

    /// <summary>Values that options and the page take: each parser must say yes with finite numbers, or no.</summary>
    internal static void Values(byte[] input)
    {
        var text = Encoding.UTF8.GetString(input);
        if (MarkedEdges.Parse(text) is { } edges)
        {
            Finite(edges.First.Start.X, edges.First.End.Y, edges.Second.Start.X, edges.Second.End.Y);
        }

        if (MarkedRing.Parse(text) is { } ring)
        {
            Finite(ring.Rim.Centre.X, ring.Rim.SemiMajor.Pixels, ring.Rim.SemiMinor.Pixels, ring.Rim.Rotation.Degrees, ring.Opening ?? 0);
        }

        if (StatedLamp.Parse(text) is { } lamp)
        {
            Finite(lamp.Side.Degrees, lamp.Height.Degrees);
        }

        if (PriorOdds.Parse(text) is { } prior)
        {
            Finite(prior.House, prior.Period, prior.Modern);
            if (Math.Abs(prior.House + prior.Period + prior.Modern - 1) > 1e-9)
            {
                throw new InvalidOperationException("The prior does not add up to one.");
            }
        }

        if (ScaleRequest.TryParse(text, out var scale, out var problem))
        {
            Finite(scale.Size?.Millimetres ?? 0);
            Finite([.. scale.Marks.SelectMany(mark => new[] { mark.X, mark.Y })]);
        }
        else if (problem.Length == 0)
        {
            throw new InvalidOperationException("The scale is refused without a word.");
        }

        Finite(InchAndMillimetre.StepOf(text));
        if (text.Contains("Host=", StringComparison.OrdinalIgnoreCase))
        {
            _ = CatalogueAddress.Parse(text);
        }
    }

    /// <summary>Words up to the point where a command would begin its work.</summary>
    internal static void CommandLine(byte[] input)
    {
        var words = WordsOf(input);
        if (words.Length > 0)
        {
            _ = new CommandLine(Parts, new Terminal(TextWriter.Null, TextWriter.Null)).ComplaintOf(words);
        }
    }

    /// <summary>The one command that opens nothing: it is run, with figures to the screen alone.</summary>
    internal static void Optics(byte[] input)
    {
        string[] words = ["optics", .. WordsOf(input).Where(word => !word.StartsWith("--json", StringComparison.Ordinal))];
        using var output = new StringWriter();
        using var error = new StringWriter();
        var code = new CommandLine(Parts, new Terminal(output, error)).Run(words, CancellationToken.None);
        if ((code == 0) != (error.ToString().Length == 0) || output.ToString().Contains("NaN", StringComparison.Ordinal))
        {
            throw new InvalidOperationException($"Exit code {code} with: {error}{output}");
        }
    }

    private static string[] WordsOf(byte[] input) => [.. Encoding.UTF8.GetString(input).Replace("\0", string.Empty, StringComparison.Ordinal).Split('\n').Where(word => word.Length > 0)];

    private static void Finite(params double[] numbers)
    {
        if (!numbers.All(double.IsFinite))
        {
            throw new InvalidOperationException("A number that is none was taken.");
        }
    }
}
