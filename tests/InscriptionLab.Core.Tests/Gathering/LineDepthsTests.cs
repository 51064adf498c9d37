using System;
using System.Linq;
using InscriptionLab.Gathering;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.Reliefs;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;
using Xunit;

namespace InscriptionLab.Core.Tests.Gathering;

/// <summary>Two lines of letters, each a stroke of known depth in its box.</summary>
public sealed class LineDepthsTests
{
    private const int Width = 300;
    private const int Height = 120;
    private const int Box = 20;

    private static readonly CylinderStripMap Map = new(
        CylinderPose.FromSilhouettes(new PixelSegment(new(0, 300), new(1000, 300)), new PixelSegment(new(0, 700), new(1000, 700)), PixelLength.FromPixels(1500), focalAssumed: false, new PixelPoint(500, 500))!, 200, -0.7, Angle.FromRadians(-0.3));

    [Fact]
    public void A_line_twice_as_deep_is_told()
    {
        var depths = LineDepths.Of(Lines("Harwick", "London"), Relief(2, 1));

        Assert.Equal([2.0, 1.0], depths.Select(depth => Math.Round(depth.Depth, 1)));
        var (deep, shallow) = LineDepths.Unequal(depths)!.Value;
        Assert.Equal((0, 1), (deep.Line, shallow.Line));
    }

    [Fact]
    public void Lines_a_little_unlike_or_letters_too_few_are_passed_over()
    {
        Assert.Null(LineDepths.Unequal(LineDepths.Of(Lines("Harwick", "London"), Relief(1.3, 1))));
        Assert.Null(LineDepths.Unequal(LineDepths.Of(Lines("Harwick", "Co."), Relief(2, 1))));
    }

    /// <summary>Letters that scatter as much as the lines differ prove nothing.</summary>
    [Fact]
    public void Scattering_letters_are_no_unlike_lines() =>
        Assert.Null(LineDepths.Unequal(LineDepths.Of(Lines("Harwick", "London"), Relief(1.7, 1, letter => 0.2 + (letter % 3)))));

    private static SurfaceRelief Relief(double first, double second, Func<int, double>? scatter = null)
    {
        var heights = new float[Width * Height];
        for (var line = 0; line < 2; line++)
        {
            for (var letter = 0; letter < 8; letter++)
            {
                for (var y = 0; y < Box - 2; y++)
                {
                    for (var x = 8; x < 12; x++)
                    {
                        heights[((20 + (line * 50) + y) * Width) + 20 + (letter * 30) + x] = (float)(-(line == 0 ? first : second) * (scatter?.Invoke(letter) ?? 1));
                    }
                }
            }
        }

        FloatImage Plain(float value) => new(Width, Height, [.. Enumerable.Repeat(value, Width * Height)]);
        return new SurfaceRelief(Map, ReliefKind.Normals, Plain(0), Plain(0), Plain(1), new FloatImage(Width, Height, heights), [], false);
    }

    private static Reading Lines(params string[] texts) => ReadLines.Of([.. texts.Select((text, line) =>
    {
        var read = ReadLines.At(0, 0, text);
        Quad Place(int letter)
        {
            var (left, top) = (20 + (letter * 30), 20 + (line * 50));
            return new Quad(Map.ToPhoto(new(left, top)), Map.ToPhoto(new(left + Box, top)), Map.ToPhoto(new(left + Box, top + Box - 2)), Map.ToPhoto(new(left, top + Box - 2)));
        }

        return read with { Letters = [.. read.Letters.Select((letter, index) => letter with { InPhoto = Place(index) })] };
    })]);
}
