using System.Collections.Immutable;
using InscriptionLab.Advice;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Vision.Light;
using InscriptionLab.Vision.Lines;
using InscriptionLab.Vision.Strips;
using InscriptionLab.Vision.Tests.Rendering;
using InscriptionLab.Vision.Tests.Strips;
using Xunit;

namespace InscriptionLab.Vision.Tests.Light;

/// <summary>Two rendered lines whose groove floors are tarnished alike or not, under several lamps.</summary>
public sealed class ToneMeterTests
{
    private const double LetterHeight = 3.2;
    private const double Between = 6;

    private static readonly TubeScene Scene = new() { Width = 700, Height = 420, Focal = 2000, Noise = 2, Radius = 24, Distance = 240 };

    [Theory]
    [InlineData(-40, 40)]
    [InlineData(30, -50)]
    [InlineData(0, 10)]
    public void Bright_grooves_beside_dark_ones_are_told_whatever_the_lamp(double around, double along)
    {
        var unlike = LineTones.Unlike(Tones(around, along, 0.45, 1.9));

        Assert.NotNull(unlike);
        Assert.Equal((1, 0), (unlike.Value.Bright.Line, unlike.Value.Dark.Line));
    }

    [Theory]
    [InlineData(-40, 40, 1)]
    [InlineData(0, 10, 1)]
    [InlineData(-40, 40, 0.45)]
    [InlineData(30, -50, 0.45)]
    [InlineData(30, -50, 1.9)]
    public void Lines_tarnished_alike_are_not_told_apart(double around, double along, double floor) =>
        Assert.Null(LineTones.Unlike(Tones(around, along, floor, floor)));

    private static ImmutableArray<LineTone> Tones(double around, double along, double first, double second)
    {
        var upper = Groove.Word("HELITE", 0, -Between / 2, LetterHeight, 0.28, 0.12);
        var lower = Groove.Word("FILTHE", 0, Between / 2, LetterHeight, 0.28, 0.12);
        double Stain(double axial, double arc) => upper.Exists(groove => groove.At(axial, arc).Height < -0.03) ? first : lower.Exists(groove => groove.At(axial, arc).Height < -0.03) ? second : 1;
        var photo = new EngravedTube(Scene, [.. upper, .. lower]) { Lettering = (axial, arc) => (0, 0, Stain(axial, arc)), Exposure = 0.9 }.Render(EngravedTube.Lamp(around, along));
        return [.. ToneMeter.Of(LineLight.Of(new Readings.Reading("scene", [LineOf(photo, -Between / 2), LineOf(photo, Between / 2)], [])))];
    }

    private static Readings.LineReading LineOf(Photo photo, double arc)
    {
        var tube = UnrollerTests.TubeOf(Scene) with { Diameter = PixelLength.FromPixels(2 * Scene.Radius * Scene.Focal / Scene.Distance) };
        var strip = new Unroller().Run(photo, tube);
        var scale = strip.PixelsPerDiameter / (2 * Scene.Radius);
        var half = 3 * 0.95 * LetterHeight * scale;
        PixelPoint At(double along) => new(((strip.Image.Width - 1) / 2.0) + along, ((strip.Image.Height - 1) / 2.0) + (arc * scale));
        return new Readings.LineReading(new LineCropper(new LineCropOptions()).Cut(photo, strip, new LineTrace(At(-half), At(half), 0, LetterHeight * scale, 1), false, Probability.One), [], Probability.One, null);
    }
}
