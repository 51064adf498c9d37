using System.Collections.Immutable;
using System.Globalization;
using InscriptionLab.Measures;

namespace InscriptionLab.Optics;

/// <summary>Weighs the words "day or night" on a glass against its pupils: what it gave at dusk beside a day glass of the same entrance pupil, with the reasoning.</summary>
/// <param name="Standing">How the claim stands.</param>
/// <param name="Reasons">Sentences with figures, in order.</param>
public sealed record DayNightClaim(DayNightStanding Standing, ImmutableArray<string> Reasons)
{
    /// <summary>Exit pupil from which a glass serves at night, in millimetres: an eye past middle age opens to about five (common practice; handbooks give 5 to 7).</summary>
    private const double NightExitPupil = 5;

    /// <summary>Exit pupil below which even dusk is darkened, in millimetres: the eye's own pupil by day is two to three (common practice).</summary>
    private const double DayExitPupil = 3;

    /// <summary>Pupil of a young eye in the dark, in millimetres (common practice).</summary>
    private static readonly Length DarkEye = Length.FromMillimetres(7);

    /// <summary>Weighs the claim.</summary>
    /// <param name="entrancePupil">Entrance pupil diameter, the stop counted.</param>
    /// <param name="magnification">Angular magnification.</param>
    public static DayNightClaim Weigh(Length entrancePupil, double magnification)
    {
        var exit = Telescope.ExitPupil(entrancePupil, magnification);
        var surface = Telescope.SurfaceBrightness(exit, DarkEye);
        var grasp = Telescope.LightGrasp(entrancePupil, DarkEye);
        var standing = exit.Millimetres >= NightExitPupil ? DayNightStanding.Served
            : exit.Millimetres >= DayExitPupil ? DayNightStanding.ServedAtDusk
            : DayNightStanding.DayOnly;
        string Words(System.FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
        return new DayNightClaim(standing,
        [
            Words($"The exit pupil is {exit.Millimetres:0.0} mm ({entrancePupil.Millimetres:0.0} mm entrance pupil, {magnification:0.#} times)."),
            Words($"An eye in the dark opens to about 7 mm when young and 5 mm later (common practice): land and sails seen through this glass then have {100 * surface:0} % of the brightness that the bare eye of 7 mm sees, losses in the glass aside. No telescope makes a surface brighter than the bare eye sees it."),
            Words($"Lights that stay points gain {grasp:0} times over the bare eye, whatever the magnification, as long as the exit pupil fits into the eye's."),
            standing switch
            {
                DayNightStanding.Served => "A glass made for the night (7 times with 50 mm, say) has an exit pupil of 7 mm: this one is of that kind.",
                DayNightStanding.ServedAtDusk => "It is brighter than a day glass (2 to 3 mm) and darker than one made for the night (5 to 7 mm): it served at dusk.",
                _ => "That is a day glass's exit pupil: at night it showed lights and little else. The words \"day or night\" were a fashion of the trade and prove nothing about maker or date.",
            },
        ]);
    }
}
