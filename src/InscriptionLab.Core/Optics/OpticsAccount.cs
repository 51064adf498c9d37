using System.Collections.Immutable;
using InscriptionLab.Measures;

namespace InscriptionLab.Optics;

/// <summary>All that follows from what is known of a telescope: figures, the "day or night" claim where the magnification is known, and what was left open.</summary>
/// <param name="Figures">Figures in the order in which they follow from each other.</param>
/// <param name="DayNight">How a "day or night" claim stands; null where the magnification is not known.</param>
/// <param name="Notes">Sentences on assumptions and contradictions.</param>
public sealed record OpticsAccount(ImmutableArray<OpticsFigure> Figures, DayNightClaim? DayNight, ImmutableArray<string> Notes)
{
    /// <summary>Green light, to which the eye is most sensitive by day, in millimetres.</summary>
    private const double GreenMillimetres = 0.00055;

    /// <summary>Magnifications from two sources that differ by more than this share contradict each other.</summary>
    private const double MagnificationTolerance = 0.05;

    /// <summary>Works out what follows.</summary>
    public static OpticsAccount Of(OpticsRequest request)
    {
        System.ArgumentNullException.ThrowIfNull(request);
        var figures = ImmutableArray.CreateBuilder<OpticsFigure>();
        var notes = ImmutableArray.CreateBuilder<string>();
        var pupil = Pupil(request, figures, notes);
        Limits(request, pupil, figures);
        Aberration(request, pupil, figures);
        var magnification = Magnification(request, pupil, figures, notes);
        DayNightClaim? claim = null;
        if (magnification is { } times)
        {
            var exit = Telescope.ExitPupil(pupil, times);
            figures.Add(new("exit pupil diameter", exit.Millimetres, "mm", "entrance pupil over magnification (ISO 14490-1)"));
            figures.Add(new("twilight number", Telescope.TwilightNumber(pupil, times), "1", "root of magnification times entrance pupil in millimetres"));
            figures.Add(new("relative brightness", Telescope.RelativeBrightness(pupil, times), "1", "square of the exit pupil in millimetres"));
            claim = DayNightClaim.Weigh(pupil, times);
        }
        else
        {
            notes.Add("Magnification and exit pupil stay open: give --eyepiece-focal with --focal, or --exit-pupil, or --magnification.");
        }

        return new OpticsAccount(figures.ToImmutable(), claim, notes.ToImmutable());
    }

    private static Length Pupil(OpticsRequest request, ImmutableArray<OpticsFigure>.Builder figures, ImmutableArray<string>.Builder notes)
    {
        if (request.Stop is not { } stop)
        {
            figures.Add(new("entrance pupil diameter", request.Objective.Millimetres, "mm", "the clear aperture: no stop was given"));
            return request.Objective;
        }

        var seen = stop;
        if (request.StopSeenThroughGlass)
        {
            if (request.FocalLength is { } focal && request.StopDistance is { } distance)
            {
                figures.Add(new("stop itself", ApertureStop.BehindObjective(stop, focal, distance).Millimetres, "mm", "its image, measured through the objective, led back: d (f - x) / f"));
            }
            else
            {
                notes.Add("The stop was measured through the objective, so its size is that of its image; give --focal and --stop-distance for the stop itself. The beam is that of the image either way.");
            }
        }
        else if (request.FocalLength is { } focal && request.StopDistance is { } distance)
        {
            seen = ApertureStop.SeenThroughObjective(stop, focal, distance);
            figures.Add(new("stop as seen through the objective", seen.Millimetres, "mm", "d f / (f - x)"));
        }
        else
        {
            notes.Add("Without --focal and --stop-distance the stop is taken to stand at the objective: farther back it lets in a wider beam than its own width.");
        }

        var pupil = ApertureStop.EntrancePupil(request.Objective, seen);
        var share = ApertureStop.LightShare(request.Objective, seen);
        figures.Add(new("stop ratio", seen / request.Objective, "1", "beam let in by the stop over the clear aperture"));
        figures.Add(new("light left by the stop", 100 * share, "%", "ratio of areas"));
        figures.Add(new("light lost by the stop", ApertureStop.StopsLost(share), "halvings", "base-two logarithm"));
        figures.Add(new("entrance pupil diameter", pupil.Millimetres, "mm", "the narrower of clear aperture and stop as seen"));
        return pupil;
    }

    private static void Limits(OpticsRequest request, Length pupil, ImmutableArray<OpticsFigure>.Builder figures)
    {
        if (request.FocalLength is { } focal)
        {
            figures.Add(new("f-number", Telescope.FNumber(focal, pupil), "1", "focal length over entrance pupil"));
        }

        figures.Add(new("Dawes limit", Resolution.Seconds(Resolution.Dawes(pupil)), "seconds of arc", "116 over millimetres of entrance pupil; a limit, not the glass's quality"));
        figures.Add(new("Rayleigh limit", Resolution.Seconds(Resolution.Rayleigh(pupil, Length.FromMillimetres(GreenMillimetres))), "seconds of arc", "1.22 wavelengths over entrance pupil, 550 nm"));
    }

    private static void Aberration(OpticsRequest request, Length pupil, ImmutableArray<OpticsFigure>.Builder figures)
    {
        if (request.FocalLength is not { } focal)
        {
            return;
        }

        if (request.Index is { } index)
        {
            var full = ThinLens.LeastBlur(index, ThinLens.ConvexFirst, focal, request.Objective);
            var stopped = ThinLens.LeastBlur(index, ThinLens.ConvexFirst, focal, pupil);
            const string Basis = "third order, thin single lens, curved side first, without its colour, which is worse";
            figures.Add(new("spherical aberration at the clear aperture's edge", ThinLens.Longitudinal(index, ThinLens.ConvexFirst, focal, request.Objective * 0.5).Millimetres, "mm along the axis", Basis));
            figures.Add(new("blur of the clear aperture", Resolution.Seconds(Angle.FromRadians(full / focal)), "seconds of arc", Basis));
            figures.Add(new("blur of the entrance pupil", Resolution.Seconds(Angle.FromRadians(stopped / focal)), "seconds of arc", Basis));
            figures.Add(new("what the stop gains", full / stopped, "times less blur", "cube of the ratio of apertures: why single lenses were stopped down"));
        }

        if (request.AbbeNumbers is { } abbe)
        {
            var doublet = Achromat.Of(focal, abbe.First, abbe.Second);
            figures.Add(new("first lens of the achromat", doublet.First.Millimetres, "mm focal length", "power V1 / (V1 - V2) of the whole, thin lenses in contact"));
            figures.Add(new("second lens of the achromat", doublet.Second.Millimetres, "mm focal length", "power -V2 / (V1 - V2) of the whole"));
        }
    }

    private static double? Magnification(OpticsRequest request, Length pupil, ImmutableArray<OpticsFigure>.Builder figures, ImmutableArray<string>.Builder notes)
    {
        var sources = ImmutableArray.CreateBuilder<OpticsFigure>();
        if (request.ExitPupil is { } exit)
        {
            sources.Add(new("angular magnification", Telescope.MagnificationOfPupils(pupil, exit), "1", "entrance over measured exit pupil (ISO 14490-1)"));
        }

        if (request.FocalLength is { } objective && request.EyepieceFocalLength is { } eyepiece)
        {
            sources.Add(new("angular magnification", Telescope.MagnificationOfFocalLengths(objective, eyepiece), "1", "focal length of objective over eyepiece"));
        }

        if (request.Magnification is { } given)
        {
            sources.Add(new("angular magnification", given, "1", "as given"));
        }

        if (sources.Count == 0)
        {
            return null;
        }

        figures.AddRange(sources);
        for (var i = 1; i < sources.Count; i++)
        {
            if (System.Math.Abs((sources[i].Value / sources[0].Value) - 1) > MagnificationTolerance)
            {
                notes.Add(string.Create(
                    System.Globalization.CultureInfo.InvariantCulture,
                    $"The magnifications contradict each other: {sources[0].Value:0.0} ({sources[0].Basis}) and {sources[i].Value:0.0} ({sources[i].Basis}). The first is used; a stop that was removed or replaced makes such a difference."));
            }
        }

        return sources[0].Value;
    }
}
