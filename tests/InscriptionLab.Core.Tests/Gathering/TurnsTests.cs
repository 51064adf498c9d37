using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Gathering;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.Tubes;
using Xunit;

namespace InscriptionLab.Core.Tests.Gathering;

/// <summary>A tube of known pose with lines at known angles, turned by known angles.</summary>
public sealed class TurnsTests
{
    private const double Degree = Math.PI / 180;

    private static readonly Tube Tube = TubeBetween(300, 700);
    private static readonly (string Text, double Degrees)[] Lettering = [("Tolliver", -20), ("Cawdry Lane", 0), ("Marlhaven", 20), ("Day or Night", 150), ("Achromatic", 170)];

    [Fact]
    public void Lines_from_all_round_the_tube_are_put_in_order()
    {
        var photos = Photos(0, 40, 80, 120, 160, 200, 240, 280, 320);

        Assert.Equal(SetKind.Turns, new Gatherer().KindOf(photos));
        var texts = new Gatherer().Gather(photos, SetKind.Turns).Lines.Select(line => line.Text).ToList();
        Assert.Equal(5, texts.Count);
        Assert.Equal(["Tolliver", "Cawdry Lane", "Marlhaven"], texts.SkipWhile(text => text != "Tolliver").Take(3));
        Assert.True(texts.IndexOf("Day or Night") < texts.IndexOf("Achromatic") || texts[0] == "Achromatic");
    }

    [Fact]
    public void A_line_that_several_photos_show_is_one_line()
    {
        var photos = Photos(0, 10, 350);

        Assert.Equal(["Tolliver", "Cawdry Lane", "Marlhaven"], new Gatherer().Gather(photos, SetKind.Turns).Lines.Select(line => line.Text));
    }

    [Fact]
    public void Most_photos_of_a_stand_outvote_the_outlines_of_one()
    {
        var wrong = TubeBetween(300, 620);
        ImmutableArray<GatheredPhoto> photos = [new(Tube, ReadLines.Of()), new(wrong, ReadLines.Of()), new(TubeBetween(301, 699), ReadLines.Of())];

        var shared = new Stand().TubeOf(photos);

        Assert.NotNull(shared);
        Assert.True(new Stand().AreSame(shared, Tube));
        Assert.False(new Stand().AreSame(shared, wrong));
        Assert.Null(new Stand().TubeOf([photos[0], photos[1]]));
    }

    [Fact]
    public void Where_each_photo_has_one_outline_wrong_each_outline_is_elected_by_itself_and_the_length_is_that_of_all()
    {
        Tube[] tubes = [TubeBetween(300, 760), TubeBetween(301, 640), TubeBetween(240, 700), TubeBetween(360, 699)];
        var shared = new Stand().ElectedTubeOf([.. tubes.Select(tube => new GatheredPhoto(tube, ReadLines.Of()))]);

        Assert.NotNull(shared);
        Assert.True(new Stand().AreSame(shared, Tube));
        var brief = Tube with { Axis = new PixelSegment(new(0, 500), new(300, 500)), Confidence = Probability.One };
        var whole = new Stand().ElectedTubeOf([new(brief, ReadLines.Of()), new(Tube, ReadLines.Of()), new(brief, ReadLines.Of())]);
        Assert.NotNull(whole);
        Assert.True(new Stand().IsShort(brief, whole));
        Assert.InRange(whole.Axis.Length.Pixels, 990, 1010);
    }

    private static Tube TubeBetween(double top, double bottom)
    {
        var (first, second) = (new PixelSegment(new(0, top), new(1000, top)), new PixelSegment(new(0, bottom), new(1000, bottom)));
        var pose = CylinderPose.FromSilhouettes(first, second, PixelLength.FromPixels(1500), focalAssumed: false, new PixelPoint(500, 500))!;
        var middle = (top + bottom) / 2;
        return new Tube(new PixelSegment(new(0, middle), new(1000, middle)), [first, second], PixelLength.FromPixels(bottom - top), pose, Probability.One, []);
    }

    private static ImmutableArray<GatheredPhoto> Photos(params double[] turns) => [.. turns.Select(turn => new GatheredPhoto(Tube, ReadLines.Of([.. Lettering
        .Select(line => (line.Text, Degrees: Math.IEEERemainder(line.Degrees + turn, 360)))
        .Where(line => Math.Abs(line.Degrees) < 60)
        .OrderBy(line => line.Degrees)
        .Select(line => Line(line.Text, line.Degrees * Degree))])))];

    private static LineReading Line(string text, double around)
    {
        const double HalfHeight = 5 * Degree;
        var projection = new CylinderProjection(Tube.Pose);
        var half = text.Length * HalfHeight / 2;
        PixelPoint At(double axial, double angle) => projection.ToPhoto(new SurfacePoint(axial, Angle.FromRadians(angle)));
        var box = new Quad(At(-half, around - HalfHeight), At(half, around - HalfHeight), At(half, around + HalfHeight), At(-half, around + HalfHeight));
        var read = ReadLines.At(0, 0, text);
        return read with { Line = read.Line with { InPhoto = box, Direction = new LineDirection(default, false, false) } };
    }
}
