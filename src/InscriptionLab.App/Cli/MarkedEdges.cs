using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.Measures;

namespace InscriptionLab.App.Cli;

/// <summary>The two long sides of a tube as a person marked them: <c>x1,y1,x2,y2/x3,y3,x4,y4</c> in pixels of the upright photo. Points may lie outside the photo.</summary>
/// <param name="First">One side.</param>
/// <param name="Second">The other side.</param>
internal sealed record MarkedEdges(PixelSegment First, PixelSegment Second)
{
    /// <summary>What stands for a photo whose tube is to be found.</summary>
    internal const string Find = "find";

    private const int Numbers = 4;

    /// <summary>Reads two sides.</summary>
    /// <returns>The sides, or null where the text is something else.</returns>
    internal static MarkedEdges? Parse(string text)
    {
        var sides = text.Split('/').Select(Side).ToImmutableArray();
        return sides is [{ } first, { } second] ? new MarkedEdges(first, second) : null;
    }

    private static PixelSegment? Side(string text)
    {
        var numbers = text.Split(',').Select(Number).ToImmutableArray();
        return numbers.Length == Numbers && numbers.All(double.IsFinite) && (numbers[0], numbers[1]) != (numbers[2], numbers[3])
            ? new PixelSegment(new PixelPoint(numbers[0], numbers[1]), new PixelPoint(numbers[2], numbers[3]))
            : null;
    }

    private static double Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : double.NaN;
}
