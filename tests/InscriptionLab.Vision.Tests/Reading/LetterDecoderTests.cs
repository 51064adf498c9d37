using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Reading;
using Xunit;

namespace InscriptionLab.Vision.Tests.Reading;

public sealed class LetterDecoderTests
{
    private static readonly ImmutableArray<string> Classes = ["", " ", "a", "e", "o", "c"];
    private static readonly LetterDecoder Decoder = new(new EngravedReaderOptions());

    [Fact]
    public void A_doubtful_letter_keeps_its_rivals_and_a_clear_one_has_none()
    {
        var reading = Decode([[0, 0, 1, 0, 0, 0], [1, 0, 0, 0, 0, 0], [0, 0, 0, 0.7, 0.298, 0.002]]);

        Assert.Equal("ae", reading.Text);
        Assert.Empty(reading.Letters[0].Alternatives);
        Assert.Equal(0.7, reading.Letters[1].Probability.Value, 3);
        var rival = Assert.Single(reading.Letters[1].Alternatives);
        Assert.Equal("o", rival.Character);
        Assert.Equal(0.298, rival.Probability.Value, 3);
        Assert.Equal(0.7, reading.Confidence.Value, 3);
    }

    [Fact]
    public void A_letter_that_may_be_anything_is_unreadable_and_keeps_all_candidates()
    {
        var reading = Decode([[0, 0, 0.25, 0.26, 0.245, 0.245]]);

        Assert.Equal(Letter.Unreadable, reading.Text);
        Assert.Equal(["e", "a", "c", "o"], reading.Letters[0].Alternatives.Select(candidate => candidate.Character));
        Assert.Equal(0.26, reading.Letters[0].Probability.Value, 3);
    }

    [Fact]
    public void Ground_on_either_side_is_no_space()
    {
        var reading = Decode([[0, 1, 0, 0, 0, 0], [0, 0, 1, 0, 0, 0], [0, 1, 0, 0, 0, 0], [0, 0, 0, 1, 0, 0], [0, 1, 0, 0, 0, 0]]);

        Assert.Equal("a e", reading.Text);
    }

    [Fact]
    public void Boxes_come_from_the_edges_and_a_space_fills_the_room_between()
    {
        var reading = Decode([[1, 0, 0, 0, 0, 0], [0, 0, 1, 0, 0, 0], [0, 1, 0, 0, 0, 0], [1, 0, 0, 0, 0, 0], [0, 0, 0, 1, 0, 0]]);

        // Frame 1 is centred on 5.5; the edges lie 2 px to the left and 1.5 px to the right of it. The ink is 0.76 x 64 rows high, and letters reach 0.012 and 0.028 of that farther out.
        const double Ink = 0.76 * 64;
        Assert.Equal(3.5 - (0.012 * Ink), reading.Letters[0].InCrop.TopLeft.X, 1e-9);
        Assert.Equal(7.0 + (0.028 * Ink), reading.Letters[0].InCrop.TopRight.X, 1e-9);
        Assert.Equal((7.0, 15.5), (reading.Letters[1].InCrop.TopLeft.X, reading.Letters[1].InCrop.TopRight.X));
        Assert.Equal(reading.Letters[0].InCrop, reading.Letters[0].InPhoto);
    }

    [Fact]
    public void Blank_frames_give_no_letters()
    {
        var reading = Decode([[1, 0, 0, 0, 0, 0], [1, 0, 0, 0, 0, 0]]);

        Assert.Empty(reading.Letters);
        Assert.Equal(Probability.Zero, reading.Confidence);
    }

    [Fact]
    public void A_reading_is_what_the_frames_say_though_a_word_is_near()
    {
        // "coco" would be the known word; the frames show "caco" a little more strongly, and that is what is read.
        var reading = Decode([[0, 0, 0, 0, 0, 1], [0, 0, 0.51, 0, 0.49, 0], [0, 0, 0, 0, 0, 1], [0, 0, 0, 0, 1, 0]]);

        Assert.Equal("caco", reading.Text);
    }

    private static LineReading Decode(double[][] frames)
    {
        var posteriors = new LinePosteriors(Classes, 0, [.. frames.SelectMany(frame => frame.Select(probability => (float)Math.Log(probability)))]);
        var width = Math.Max(8, frames.Length * EngravedNetwork.FrameWidth);
        var crop = new GrayImage(width, EngravedNetwork.Height, new byte[width * EngravedNetwork.Height]);
        var line = new LetteringLine(crop, new FlatStripMap(1), default, default, new LineDirection(default, false, false), PixelLength.FromPixels(40), Probability.One);
        return Decoder.Decode(line, new LineSight(posteriors, [1, 0, 0, 0], [1], 1, [.. frames.Select(_ => (2f, 1.5f))]));
    }
}
