using InscriptionLab.Measures;
using InscriptionLab.Optics;
using Xunit;

namespace InscriptionLab.Core.Tests.Optics;

public sealed class TelescopeTests
{
    /// <summary>Exit pupil, twilight number and relative brightness as binocular makers and handbooks print them (7x50: 7.1, 18.7, 51; 8x30: 3.75, 15.5, 14.1; 10x50: 5, 22.4, 25; 20x50: 2.5, 31.6, 6.25).</summary>
    [Theory]
    [InlineData(7, 50, 7.143, 18.71, 51.02)]
    [InlineData(8, 30, 3.75, 15.49, 14.06)]
    [InlineData(10, 50, 5, 22.36, 25)]
    [InlineData(8, 42, 5.25, 18.33, 27.56)]
    [InlineData(20, 50, 2.5, 31.62, 6.25)]
    public void The_figures_of_common_glasses_come_out_as_printed(double magnification, double pupil, double exit, double twilight, double brightness)
    {
        var entrance = Length.FromMillimetres(pupil);
        Assert.Equal(exit, Telescope.ExitPupil(entrance, magnification).Millimetres, 0.005);
        Assert.Equal(twilight, Telescope.TwilightNumber(entrance, magnification), 0.005);
        Assert.Equal(brightness, Telescope.RelativeBrightness(entrance, magnification), 0.005);
    }

    /// <summary>One web page prints 37.5 for 8x50; the square of 50/8 is 39.06.</summary>
    [Fact]
    public void A_figure_printed_wrongly_is_not_reproduced() =>
        Assert.Equal(39.06, Telescope.RelativeBrightness(Length.FromMillimetres(50), 8), 0.005);

    /// <summary>ISO 14490-1: magnification is entrance over exit pupil diameter; it equals the ratio of focal lengths.</summary>
    [Fact]
    public void Pupils_and_focal_lengths_give_one_magnification()
    {
        Assert.Equal(20, Telescope.MagnificationOfFocalLengths(Length.FromMillimetres(600), Length.FromMillimetres(30)), 12);
        Assert.Equal(20, Telescope.MagnificationOfPupils(Length.FromMillimetres(40), Length.FromMillimetres(2)), 12);
    }

    /// <summary>Dawes: 116 seconds over millimetres (200 mm: 0.58), which is 4.56 over inches.</summary>
    [Theory]
    [InlineData(200, 0.58)]
    [InlineData(50, 2.32)]
    [InlineData(40, 2.90)]
    [InlineData(25.4, 4.567)]
    public void Dawes_limit_is_as_published(double millimetres, double seconds) =>
        Assert.Equal(seconds, Resolution.Seconds(Resolution.Dawes(Length.FromMillimetres(millimetres))), 0.001);

    /// <summary>Rayleigh: 1.22 times wavelength over diameter; 138.4 seconds over millimetres at 550 nm (200 mm: 0.692).</summary>
    [Theory]
    [InlineData(200, 0.692)]
    [InlineData(50, 2.768)]
    [InlineData(40, 3.460)]
    public void Rayleighs_limit_is_as_published(double millimetres, double seconds) =>
        Assert.Equal(seconds, Resolution.Seconds(Resolution.Rayleigh(Length.FromMillimetres(millimetres), Length.FromMillimetres(0.00055))), 0.002);

    /// <summary>A 7x50 is the handbooks' night glass; 20 times with 40 mm has the 2 mm of a day glass.</summary>
    [Theory]
    [InlineData(50, 7, DayNightStanding.Served)]
    [InlineData(30, 8, DayNightStanding.ServedAtDusk)]
    [InlineData(40, 20, DayNightStanding.DayOnly)]
    public void Words_of_day_and_night_are_weighed_by_the_exit_pupil(double pupil, double magnification, DayNightStanding standing)
    {
        var claim = DayNightClaim.Weigh(Length.FromMillimetres(pupil), magnification);
        Assert.Equal(standing, claim.Standing);
        Assert.Equal(4, claim.Reasons.Length);
    }

    [Fact]
    public void A_surface_never_gets_brighter_than_the_bare_eye_sees_it()
    {
        Assert.Equal(1, Telescope.SurfaceBrightness(Length.FromMillimetres(9), Length.FromMillimetres(7)));
        Assert.Equal(4.0 / 49, Telescope.SurfaceBrightness(Length.FromMillimetres(2), Length.FromMillimetres(7)), 12);
        Assert.Equal(1600.0 / 49, Telescope.LightGrasp(Length.FromMillimetres(40), Length.FromMillimetres(7)), 12);
    }
}
