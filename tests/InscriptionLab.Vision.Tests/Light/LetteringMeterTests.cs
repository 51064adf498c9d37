using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Imaging;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Readings;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Light;
using InscriptionLab.Vision.Tests.Rendering;
using Xunit;

namespace InscriptionLab.Vision.Tests.Light;

/// <summary>A photo and the same one with every pixel shown as a square of pixels: what is measured of the letters must be the same.</summary>
public sealed class LetteringMeterTests
{
    private const string Word = "HELITE";

    [Theory]
    [InlineData(3)]
    [InlineData(6)]
    public void Tall_letters_are_measured_as_the_same_letters_in_a_smaller_photo(int times)
    {
        var scene = new TubeScene { Width = 520, Height = 360, Noise = 1.5, Radius = 24, Distance = 200 };
        var photo = new EngravedTube(scene, Groove.Word(Word, 0, 0, 3.2, 0.28, 0.17)) { Exposure = 1.2, Ambient = 0.02 }.Render(EngravedTube.Lamp(45, 45));

        var small = new LetteringMeter().Measure(photo, null, ReadingOf(scene, 1), CancellationToken.None);
        var large = new LetteringMeter().Measure(Enlarged(photo, times), null, ReadingOf(scene, times), CancellationToken.None);

        Assert.InRange(large.LetterHeight!.Value.Pixels / small.LetterHeight!.Value.Pixels, 0.999 * times, 1.001 * times);
        Assert.InRange(large.Contrast, 0.93 * small.Contrast, 1.07 * small.Contrast);
        Assert.InRange(large.StemsToBars!.Value, 0.9 * small.StemsToBars!.Value, 1.1 * small.StemsToBars.Value);
        Assert.InRange(large.SharpBlur.Pixels / times, 0.8 * small.SharpBlur.Pixels, 1.25 * small.SharpBlur.Pixels);
        Assert.InRange(large.MiddleLevel, small.MiddleLevel - 2, small.MiddleLevel + 2);
    }

    private static Photo Enlarged(Photo photo, int times)
    {
        var (width, height) = (photo.Gray.Width * times, photo.Gray.Height * times);
        var gray = new byte[width * height];
        for (var i = 0; i < gray.Length; i++)
        {
            gray[i] = photo.Gray[i % width / times, i / width / times];
        }

        return photo with { Gray = new GrayImage(width, height, gray), Colour = new ColourImage(width, height, [.. gray.SelectMany(level => new[] { level, level, level })]) };
    }

    private static Readings.Reading ReadingOf(TubeScene scene, double times)
    {
        const double Height = 3.2;
        PixelPoint At(double axial, double arc)
        {
            var point = scene.Project(scene.SurfaceAt(axial, arc / scene.Radius));
            return new PixelPoint(((point.X + 0.5) * times) - 0.5, ((point.Y + 0.5) * times) - 0.5);
        }

        var letters = Word.Select((letter, i) =>
        {
            var left = (i - (Word.Length / 2.0)) * 0.95 * Height;
            return new Letter(letter.ToString(), Probability.One, [], new Quad(At(left, -Height / 2), At(left + (0.6 * Height), -Height / 2), At(left + (0.6 * Height), Height / 2), At(left, Height / 2)), default);
        }).ToImmutableArray();
        var box = new Quad(letters[0].InPhoto.TopLeft, letters[^1].InPhoto.TopRight, letters[^1].InPhoto.BottomRight, letters[0].InPhoto.BottomLeft);
        var line = new LetteringLine(new GrayImage(1, 1, [0]), new FlatStripMap(1), box, box, new LineDirection(default, false, false), box.TopLeft.DistanceTo(box.BottomLeft), Probability.One);
        return new Readings.Reading("scene", [new LineReading(line, letters, Probability.One, null)], []);
    }
}
