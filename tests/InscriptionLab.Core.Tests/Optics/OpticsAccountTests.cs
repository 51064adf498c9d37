using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Optics;
using Xunit;

namespace InscriptionLab.Core.Tests.Optics;

/// <summary>The whole account of a telescope, each figure by hand from the one before.</summary>
public sealed class OpticsAccountTests
{
    /// <summary>
    /// 40 mm of glass, 600 mm to the focus, a 20 mm stop 60 mm behind: 20 x 600 / 540 = 22.222 mm of beam, 0.5556 of the width, 30.86 % of the light, 600 / 22.222 = 27; 116 / 22.222 = 5.22 and
    /// 1.21967 x 0.00055 / 22.222 rad = 6.226 seconds. Index 1.5, curved side first: 7/6 x 20² / 600 = 0.7778 mm along the axis; half of 0.7778 x 20 / 600, over 600 mm, is 4.456 seconds, and
    /// 1.8³ = 5.832 times less with the stop: 0.764. The measured exit pupil of 1.25 mm says 17.78 times, the eyepiece of 30 mm 20 times: an eighth more than the first.
    /// </summary>
    [Fact]
    public void Every_figure_follows_from_the_one_before()
    {
        var account = OpticsAccount.Of(new OpticsRequest
        {
            Objective = Mm(40),
            Stop = Mm(20),
            StopDistance = Mm(60),
            FocalLength = Mm(600),
            Index = 1.5,
            ExitPupil = Mm(1.25),
            EyepieceFocalLength = Mm(30),
        });

        Assert.Equal(22.2222, Value(account, "stop as seen through the objective"), 4);
        Assert.Equal(0.5556, Value(account, "stop ratio"), 4);
        Assert.Equal(30.864, Value(account, "light left by the stop"), 3);
        Assert.Equal(1.696, Value(account, "light lost by the stop"), 3);
        Assert.Equal(22.2222, Value(account, "entrance pupil diameter"), 4);
        Assert.Equal(27, Value(account, "f-number"), 9);
        Assert.Equal(5.22, Value(account, "Dawes limit"), 6);
        Assert.Equal(6.2265, Value(account, "Rayleigh limit"), 3);
        Assert.Equal(0.77778, Value(account, "spherical aberration at the clear aperture's edge"), 5);
        Assert.Equal(4.4563, Value(account, "blur of the clear aperture"), 3);
        Assert.Equal(0.7641, Value(account, "blur of the entrance pupil"), 3);
        Assert.Equal(5.832, Value(account, "what the stop gains"), 6);
        Assert.Equal([17.7778, 20], account.Figures.Where(figure => figure.Name == "angular magnification").Select(figure => System.Math.Round(figure.Value, 4)));
        Assert.Equal(1.25, Value(account, "exit pupil diameter"), 9);
        Assert.Equal(19.876, Value(account, "twilight number"), 3);
        Assert.Equal(1.5625, Value(account, "relative brightness"), 9);
        Assert.Equal(DayNightStanding.DayOnly, account.DayNight!.Standing);
        Assert.Contains("contradict", Assert.Single(account.Notes), System.StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_stop_the_clear_aperture_is_the_pupil_and_without_a_magnification_the_rest_stays_open()
    {
        var account = OpticsAccount.Of(new OpticsRequest { Objective = Mm(30) });

        Assert.Equal(["entrance pupil diameter", "Dawes limit", "Rayleigh limit"], account.Figures.Select(figure => figure.Name));
        Assert.Equal(30, Value(account, "entrance pupil diameter"));
        Assert.Null(account.DayNight);
        Assert.Contains("--magnification", Assert.Single(account.Notes), System.StringComparison.Ordinal);
    }

    /// <summary>The image of 22.222 mm led back is the stop of 20 mm; the beam is that of the image whether or not it can be led back.</summary>
    [Fact]
    public void A_stop_measured_through_the_glass_is_led_back()
    {
        var seen = new OpticsRequest { Objective = Mm(40), Stop = Mm(20.0 * 600 / 540), StopSeenThroughGlass = true, Magnification = 20 };
        var open = OpticsAccount.Of(seen);
        var ledBack = OpticsAccount.Of(seen with { FocalLength = Mm(600), StopDistance = Mm(60) });

        Assert.Equal(20, Value(ledBack, "stop itself"), 9);
        Assert.Empty(ledBack.Notes);
        Assert.DoesNotContain(open.Figures, figure => figure.Name == "stop itself");
        Assert.Contains("its image", Assert.Single(open.Notes), System.StringComparison.Ordinal);
        Assert.All([open, ledBack], account => Assert.Equal(22.2222, Value(account, "entrance pupil diameter"), 4));
    }

    [Fact]
    public void A_stop_of_unknown_place_is_taken_to_stand_at_the_objective()
    {
        var account = OpticsAccount.Of(new OpticsRequest { Objective = Mm(40), Stop = Mm(20), Magnification = 10 });

        Assert.Equal(20, Value(account, "entrance pupil diameter"));
        Assert.Equal(25, Value(account, "light left by the stop"), 9);
        Assert.Equal(2, Value(account, "exit pupil diameter"), 9);
        Assert.Contains("farther back", Assert.Single(account.Notes), System.StringComparison.Ordinal);
    }

    /// <summary>As in <see cref="LensTests"/>: crown and flint of published Abbe numbers, one metre.</summary>
    [Fact]
    public void An_achromat_is_parted_into_its_two_lenses()
    {
        var account = OpticsAccount.Of(new OpticsRequest { Objective = Mm(50), FocalLength = Mm(1000), AbbeNumbers = (64.17, 36.37), Magnification = 25, EyepieceFocalLength = Mm(40) });

        Assert.Equal(433.224, Value(account, "first lens of the achromat"), 3);
        Assert.Equal(-764.366, Value(account, "second lens of the achromat"), 3);
        Assert.Empty(account.Notes);
    }

    private static double Value(OpticsAccount account, string name) => account.Figures.Single(figure => figure.Name == name).Value;

    private static Length Mm(double millimetres) => Length.FromMillimetres(millimetres);
}
