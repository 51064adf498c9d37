using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.Tubes;

namespace InscriptionLab.App.Examining;

/// <summary>The part of a tube that carries the lettering.</summary>
internal static class LetteredPart
{
    /// <summary>Gives the middle of the lettering in the photo, the mean of the letters' centres; null where nothing was read.</summary>
    internal static PixelPoint? MiddleOf(Reading reading)
    {
        var centres = reading.Lines.SelectMany(line => line.Letters).Where(letter => !letter.IsSpace).Select(letter => letter.InPhoto.Centre).ToList();
        return centres.Count == 0 ? null : new PixelPoint(centres.Average(point => point.X), centres.Average(point => point.Y));
    }

    /// <summary>Gives the distance between the silhouettes at the middle of the lettering, or of the visible tube where nothing was read.</summary>
    internal static PixelLength DiameterOf(Tube tube, Reading reading) =>
        MiddleOf(reading) is { } middle ? tube.DiameterAt(middle) : tube.Diameter;

    /// <summary>Gives the likeliest tube that carries lettering: most lines lie between its outlines. The first where nothing was read; null where no line lies on any tube.</summary>
    internal static Tube? TubeOf(Reading reading, ImmutableArray<Tube> tubes)
    {
        if (reading.Lines.IsEmpty)
        {
            return tubes[0];
        }

        int Carried(Tube tube) => reading.Lines.Count(line => tube.Shows(line.Line.InPhoto.Centre));
        var best = tubes.MaxBy(Carried)!;
        return Carried(best) == 0 ? null : best;
    }
}
