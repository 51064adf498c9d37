using InscriptionLab.Advice;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using Xunit;

namespace InscriptionLab.Core.Tests.Advice;

/// <summary>What the side of the light adds to advice.</summary>
public sealed class LampAdviceTests
{
    [Theory]
    [InlineData(-90, 30, 0.7, true)] // Above the line, stems weak: two witnesses.
    [InlineData(-90, 50, 0.7, false)] // Too uncertain to be one.
    [InlineData(0, 30, 0.7, false)] // Beyond the end the light crosses the stems.
    [InlineData(180, 30, 1.6, true)] // Beyond the start, bars weak.
    [InlineData(90, 30, 1.6, false)]
    public void A_lamp_in_line_with_the_weaker_strokes_is_named_earlier(double side, double uncertainty, double stemsToBars, bool named) =>
        Assert.Equal(named, new Adviser().Advise(Measures(side, uncertainty, stemsToBars)).Has(LimitKind.LightAlongStrokes));

    [Fact]
    public void The_step_says_where_the_light_comes_from_and_where_to_put_it()
    {
        var step = new Adviser().Advise(Measures(-90, 30, 0.5)).Limits[0].Steps[0];

        Assert.StartsWith("The light seems to come from above the line. Put the lamp at one end of the line", step, System.StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, "beyond the end of the line")]
    [InlineData(91, "below the line")]
    [InlineData(-91, "above the line")]
    [InlineData(179, "beyond the start of the line")]
    [InlineData(-179, "beyond the start of the line")]
    [InlineData(-45, "above the line, toward its end")]
    [InlineData(130, "below the line, toward its start")]
    public void Sides_have_names(double degrees, string name) => Assert.Equal(name, Lamp(degrees, 20).Words);

    private static LampSight Lamp(double side, double uncertainty) => new(Angle.FromDegrees(side), Angle.FromDegrees(uncertainty), default, "grooves");

    private static LetteringMeasures Measures(double side, double uncertainty, double stemsToBars) => new()
    {
        Read = true,
        LetterHeight = PixelLength.FromPixels(40),
        SharpBlur = PixelLength.FromPixels(0.7),
        WideBlur = PixelLength.FromPixels(0.8),
        BrightLevel = 220,
        MiddleLevel = 120,
        Contrast = 0.4,
        StemsToBars = stemsToBars,
        Light = new Outcome<LampSight>.Found(Lamp(side, uncertainty)),
        Blockiness = 1.1,
        ScaleSeen = true,
    };
}
