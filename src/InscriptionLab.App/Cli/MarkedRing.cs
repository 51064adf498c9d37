using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.Measures;

namespace InscriptionLab.App.Cli;

/// <summary>The rim of a ring as a person marked it: <c>x,y,a,b,degrees</c> in pixels of the upright photo, and the opening as a share of the rim where it is known.</summary>
/// <param name="Rim">The rim.</param>
/// <param name="Opening">The opening's share; null where it was not said.</param>
internal sealed record MarkedRing(PixelEllipse Rim, double? Opening)
{
    /// <summary>What stands for a photo whose ring is to be found.</summary>
    internal const string Find = "find";

    /// <summary>How a ring is written.</summary>
    internal const string Grammar = "the rim of the ring is written x,y,a,b,degrees: its middle, its two half axes in pixels of the upright photo, and the direction of the first axis clockwise from the level; a sixth number gives the opening as a share of the rim, such as 0.6";

    private const int Numbers = 5;

    /// <summary>Reads a ring.</summary>
    /// <returns>The ring, or null where the text is something else.</returns>
    internal static MarkedRing? Parse(string text)
    {
        var numbers = text.Split(',').Select(Number).ToImmutableArray();
        if (numbers.Length is not (Numbers or Numbers + 1) || !numbers.All(double.IsFinite) || !(numbers[2] > 0 && numbers[3] > 0))
        {
            return null;
        }

        double? opening = numbers.Length > Numbers ? numbers[Numbers] : null;
        var (longer, shorter, degrees) = numbers[2] >= numbers[3] ? (numbers[2], numbers[3], numbers[4]) : (numbers[3], numbers[2], numbers[4] + 90);
        return opening is not null and not (> 0 and < 1)
            ? null
            : new MarkedRing(new PixelEllipse(new PixelPoint(numbers[0], numbers[1]), PixelLength.FromPixels(longer), PixelLength.FromPixels(shorter), Angle.FromDegrees(degrees)), opening);
    }

    private static double Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : double.NaN;
}
