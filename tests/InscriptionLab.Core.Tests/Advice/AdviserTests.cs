using System.Linq;
using InscriptionLab.Advice;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using Xunit;

namespace InscriptionLab.Core.Tests.Advice;

public sealed class AdviserTests
{
    private static readonly LetteringMeasures Good = new()
    {
        Read = true,
        LetterHeight = PixelLength.FromPixels(40),
        TubeDiameter = PixelLength.FromPixels(500),
        SharpBlur = PixelLength.FromPixels(0.7),
        WideBlur = PixelLength.FromPixels(0.8),
        BrightLevel = 220,
        MiddleLevel = 120,
        Contrast = 0.4,
        StemsToBars = 1.2,
        TurnedAway = Angle.FromDegrees(10),
        Around = Angle.FromDegrees(10),
        JpegQuality = 85,
        Blockiness = 1.1,
        ScaleSeen = true,
    };

    [Fact]
    public void A_good_photo_is_not_limited() => Assert.Empty(new Adviser().Advise(Good).Limits);

    [Fact]
    public void Small_letters_are_told_how_much_closer_to_come()
    {
        var advice = new Adviser().Advise(Good with { LetterHeight = PixelLength.FromPixels(8) });

        Assert.Equal(LimitKind.Pixels, advice.Worst);
        Assert.Contains("3 times as tall", advice.Limits[0].Steps[0], System.StringComparison.Ordinal);
    }

    [Fact]
    public void Without_letters_the_tube_tells_how_large_they_would_be() =>
        Assert.Equal(LimitKind.Pixels, new Adviser().Advise(Good with { Read = false, LetterHeight = null, TubeDiameter = PixelLength.FromPixels(150) }).Worst);

    [Fact]
    public void Wide_edges_in_one_direction_are_movement_and_in_all_a_fault_of_focus()
    {
        var wide = PixelLength.FromPixels(4);

        Assert.Equal(LimitKind.Focus, new Adviser().Advise(Good with { SharpBlur = wide, WideBlur = wide }).Worst);
        Assert.Equal(LimitKind.Motion, new Adviser().Advise(Good with { WideBlur = wide }).Worst);
    }

    [Fact]
    public void Strokes_that_a_movement_does_not_account_for_are_flat()
    {
        var moved = Good with { WideBlur = PixelLength.FromPixels(2) };

        Assert.Equal(LimitKind.Motion, new Adviser().Advise(moved with { Contrast = 0.12 }).Worst);
        Assert.Equal([LimitKind.FlatLight], new Adviser().Advise(moved with { Contrast = 0.05 }).Limits.Select(limit => limit.Kind));
    }

    [Fact]
    public void Where_nothing_was_read_blur_is_named_before_a_bright_line_along_the_tube()
    {
        var blurred = Good with { SharpBlur = PixelLength.FromPixels(4), WideBlur = PixelLength.FromPixels(4), WashedShare = 0.4 };

        Assert.Equal(LimitKind.Glare, new Adviser().Advise(blurred).Worst);
        Assert.Equal([LimitKind.Focus], new Adviser().Advise(blurred with { Read = false, LetterHeight = null }).Limits.Select(limit => limit.Kind));
    }

    [Fact]
    public void Sharp_outlines_beside_soft_letters_tell_where_the_camera_focused()
    {
        var soft = Good with { SharpBlur = PixelLength.FromPixels(4), WideBlur = PixelLength.FromPixels(4) };
        string Step(double rise) => new Adviser().Advise(soft with { Outlines = new Outcome<OutlineSharpness>.Found(new OutlineSharpness(0.2, PixelLength.FromPixels(rise), 5)) }).Limits[0].Steps[0];

        Assert.Contains("focused behind the lettering", Step(2.5), System.StringComparison.Ordinal);
        Assert.DoesNotContain("behind", Step(8), System.StringComparison.Ordinal);
    }

    [Fact]
    public void Dark_photos_are_not_called_flat()
    {
        var advice = new Adviser().Advise(Good with { BrightLevel = 30, Contrast = 0.05 });

        Assert.Equal([LimitKind.TooDark], advice.Limits.Select(limit => limit.Kind));
    }

    [Fact]
    public void Hidden_stems_ask_for_a_lamp_at_the_end_of_the_line()
    {
        Assert.Contains("at one end of the line", new Adviser().Advise(Good with { StemsToBars = 0.4 }).Limits[0].Steps[0], System.StringComparison.Ordinal);
        Assert.Contains("above or below the line", new Adviser().Advise(Good with { StemsToBars = 2.5 }).Limits[0].Steps[0], System.StringComparison.Ordinal);
    }

    [Fact]
    public void A_tube_turned_away_is_told_how_far_to_turn()
    {
        var advice = new Adviser().Advise(Good with { TurnedAway = Angle.FromDegrees(62), Around = Angle.FromDegrees(62) });

        Assert.Equal(LimitKind.Angle, advice.Worst);
        Assert.Contains("60 degrees", advice.Limits[0].Steps[0], System.StringComparison.Ordinal);
        Assert.Contains("upper", advice.Limits[0].Steps[0], System.StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_scale_comes_last_and_limits_no_reading()
    {
        var advice = new Adviser().Advise(Good with { ScaleSeen = false });

        Assert.Null(advice.Worst);
        Assert.Equal(LimitKind.NoScale, advice.Limits.Single().Kind);
    }

    [Fact]
    public void Every_limit_has_one_to_three_steps_and_a_source()
    {
        var bad = Good with { LetterHeight = PixelLength.FromPixels(5), WashedShare = 0.3, TurnedAway = Angle.FromDegrees(70), CutByFrame = true, JpegQuality = 10, ScaleSeen = false };

        Assert.All(new Adviser().Advise(bad).Limits, limit =>
        {
            Assert.InRange(limit.Steps.Length, 1, 3);
            Assert.NotEmpty(limit.Source);
            Assert.True(limit.Severity >= 1);
        });
    }

    [Fact]
    public void A_seller_is_asked_only_for_what_no_photo_shows()
    {
        var adviser = new Adviser();
        var blurred = adviser.Advise(Good with { SharpBlur = PixelLength.FromPixels(4), WideBlur = PixelLength.FromPixels(4) });
        var good = adviser.Advise(Good);

        Assert.Contains(PhotoRequests.Of([blurred], false, false), text => text.Contains("sharp", System.StringComparison.Ordinal));
        Assert.DoesNotContain(PhotoRequests.Of([blurred, good], false, false), text => text.Contains("sharp", System.StringComparison.Ordinal));
        Assert.Empty(PhotoRequests.Of([good], differentLamps: true, turned: true));
        Assert.Empty(PhotoRequests.Of([], false, false));
    }
}
