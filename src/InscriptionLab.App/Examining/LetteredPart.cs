using System;
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

    /// <summary>Gives whether a line runs round the tube (more than 60 degrees from its axis in the photo) or along it (less than 30); null between the two or where there is no tube.</summary>
    internal static bool? RunsAround(Tube? tube, Reading reading, int? line)
    {
        if (tube is null || line is not { } index || index >= reading.Lines.Length)
        {
            return null;
        }

        var quad = reading.Lines[index].Line.InPhoto;
        var (x, y) = (quad.TopRight.X - quad.TopLeft.X, quad.TopRight.Y - quad.TopLeft.Y);
        var (axisX, axisY) = (tube.Axis.End.X - tube.Axis.Start.X, tube.Axis.End.Y - tube.Axis.Start.Y);
        var cosine = Math.Abs((x * axisX) + (y * axisY)) / (Math.Sqrt((x * x) + (y * y)) * Math.Sqrt((axisX * axisX) + (axisY * axisY)));
        return cosine > Math.Sqrt(0.75) ? false : cosine < 0.5 ? true : null;
    }

    /// <summary>
    /// Gives the likeliest tube that carries lettering: most lines lie on its visible length, or, where none does on any tube, between its outlines drawn out.
    /// The first where nothing was read; null where no line lies on any tube.
    /// </summary>
    internal static Tube? TubeOf(Reading reading, ImmutableArray<Tube> tubes)
    {
        if (reading.Lines.IsEmpty)
        {
            return tubes[0];
        }

        var best = tubes.MaxBy(tube => LinesOn(tube, reading))!;
        if (LinesOn(best, reading) > 0)
        {
            return best;
        }

        int Shown(Tube tube) => reading.Lines.Count(line => tube.Shows(line.Line.InPhoto.Centre));
        best = tubes.MaxBy(Shown)!;
        return Shown(best) == 0 ? null : best;
    }

    /// <summary>Tells whether another tube carries lettering too.</summary>
    internal static bool OthersCarry(Tube tube, ImmutableArray<Tube> tubes, Reading reading) =>
        tubes.Any(other => !ReferenceEquals(other, tube) && LinesOn(other, reading) > 0);

    /// <summary>Gives the number of lines on a tube's visible length.</summary>
    internal static int LinesOn(Tube tube, Reading reading) => reading.Lines.Count(line => tube.Carries(line.Line.InPhoto.Centre));
}
