using System;
using System.Text.Json;
using Xunit;

namespace InscriptionLab.App.Tests.Cli;

public sealed class OpticsTests
{
    /// <summary>Worked by similar triangles: 40 mm objective of 600 mm, 20 mm stop 60 mm behind it: 22.222 mm, ratio of areas 0.30864.</summary>
    [Fact]
    public void What_follows_from_the_sizes_is_written_with_its_reasons()
    {
        var run = ProgramRun.Of("optics", "--objective", "40mm", "--stop", "20mm", "--stop-distance", "60mm", "--focal", "600mm", "--eyepiece-focal", "30mm");

        Assert.Equal(0, run.Code);
        Assert.Contains("22.222 mm", run.Output, StringComparison.Ordinal);
        Assert.Contains("30.864 %", run.Output, StringComparison.Ordinal);
        Assert.Contains("day or night", run.Output, StringComparison.Ordinal);
        Assert.Contains("Sun", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_figures_come_as_json_too()
    {
        var run = ProgramRun.Of("optics", "--objective", "50mm", "--magnification", "7", "--json", "-");

        using var json = JsonDocument.Parse(run.Output);
        var exit = Assert.Single(json.RootElement.GetProperty("figures").EnumerateArray(), f => f.GetProperty("name").GetString() == "exit pupil diameter");
        Assert.Equal(50.0 / 7, exit.GetProperty("value").GetDouble(), 9);
    }

    [Fact]
    public void Magnifications_that_contradict_each_other_are_told()
    {
        var run = ProgramRun.Of("optics", "--objective", "40mm", "--focal", "600mm", "--eyepiece-focal", "30mm", "--exit-pupil", "1mm");

        Assert.Contains("contradict", run.Output, StringComparison.Ordinal);
    }

    /// <summary>A published catalogue row gives 1.4 in beside 40 mm; 1.4 in are 35.6 mm.</summary>
    [Fact]
    public void A_size_written_twice_is_checked()
    {
        Assert.Contains("slip", ProgramRun.Of("optics", "--objective", "40mm", "--also-written", "1.4inch").Output, StringComparison.Ordinal);
        Assert.DoesNotContain("slip", ProgramRun.Of("optics", "--objective", "41mm", "--also-written", "1.6inch").Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--objective", "wide", "wide")]
    [InlineData("--objective", "40", "unit")]
    [InlineData("--stop", "20mm", "--objective")]
    public void What_is_not_understood_costs_one_sentence(string option, string value, string named)
    {
        var run = ProgramRun.Of("optics", option, value);

        Assert.Equal(2, run.Code);
        BadInputTests.IsOneSentenceAbout(named, run);
    }

    [Fact]
    public void A_stop_beyond_the_focus_is_refused()
    {
        var run = ProgramRun.Of("optics", "--objective", "40mm", "--stop", "20mm", "--focal", "100mm", "--stop-distance", "200mm");

        Assert.Equal(2, run.Code);
        BadInputTests.IsOneSentenceAbout("stop lies between", run);
    }
}
