using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Advice;
using InscriptionLab.Imaging;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Light;
using InscriptionLab.Vision.Tests.Rendering;
using Xunit;

namespace InscriptionLab.Vision.Tests.Light;

/// <summary>Rendered grooves under a lamp on the right and on the wrong side of the line.</summary>
public sealed class LampSideTests
{
    private const double LetterHeight = 3.2;

    [Theory]
    [InlineData("HELITE", 0, 68, LimitKind.LightAlongStrokes)]
    [InlineData("HELITE", 0, -68, LimitKind.LightAlongStrokes)]
    [InlineData("FILTHE", 0, 68, LimitKind.LightAlongStrokes)]
    [InlineData("HELITE", 66, 0, LimitKind.LightAlongStrokes)]
    [InlineData("HELITE", -66, 0, LimitKind.LightAlongStrokes)]
    [InlineData("FILTHE", 66, 0, LimitKind.LightAlongStrokes)]
    [InlineData("HELITE", 45, 45, null)]
    [InlineData("FILTHE", -45, 40, null)]
    public void Light_along_the_strokes_is_told_from_light_across_them(string word, double around, double along, LimitKind? expected)
    {
        var scene = new TubeScene { Width = 520, Height = 360, Noise = 1.5, Radius = 24, Distance = 200 };
        var photo = new EngravedTube(scene, Groove.Word(word, 0, 0, LetterHeight, 0.28, 0.17)) { Exposure = 1.2, Ambient = 0.02 }.Render(EngravedTube.Lamp(around, along));

        var measures = new LetteringMeter().Measure(photo, null, ReadingOf(word, scene), CancellationToken.None);
        var advice = new Adviser().Advise(measures);

        Assert.True(advice.Worst == expected, $"{advice.Worst}: {measures}");
        if (expected is not null)
        {
            Assert.Equal(around != 0, measures.StemsToBars < 1);
        }
    }

    private static Readings.Reading ReadingOf(string word, TubeScene scene)
    {
        PixelPoint At(double axial, double arc) => scene.Project(scene.SurfaceAt(axial, arc / scene.Radius));
        var letters = word.Select((letter, i) =>
        {
            var left = (i - (word.Length / 2.0)) * 0.95 * LetterHeight;
            var right = left + (0.6 * LetterHeight);
            var half = LetterHeight / 2;
            return new Letter(letter.ToString(), Probability.One, [], new Quad(At(left, -half), At(right, -half), At(right, half), At(left, half)), default);
        }).ToImmutableArray();
        var box = new Quad(letters[0].InPhoto.TopLeft, letters[^1].InPhoto.TopRight, letters[^1].InPhoto.BottomRight, letters[0].InPhoto.BottomLeft);
        var line = new LetteringLine(new GrayImage(1, 1, [0]), new FlatStripMap(1), box, box, new LineDirection(default, false, false), box.TopLeft.DistanceTo(box.BottomLeft), Probability.One);
        return new Readings.Reading("scene", [new LineReading(line, letters, Probability.One, null)], []);
    }
}
