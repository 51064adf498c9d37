using System;
using System.Collections.Generic;
using System.Linq;
using CsCheck;
using InscriptionLab.Imaging;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.Strips;
using Xunit;

namespace InscriptionLab.Core.Tests.Readings;

public sealed class RingLetteringTests
{
    private static readonly RingPlane Plane = new(Ellipse(300, 270), Ellipse(180, 162));

    private static readonly RingStripMap Map = new(Plane, true, 300, default);

    [Fact]
    public void A_text_over_the_first_column_is_not_cut()
    {
        // From 320 degrees over 0 to 40: the widest gap lies between 40 and 320, its middle at 180.
        var cut = RingLettering.Cut(Of(Line("TOLLIVOR", 320, 10, 0.9)), Map);
        Assert.NotNull(cut);
        Assert.Equal(180, Math.Abs(cut.Start.Degrees), 0.01);
        Assert.True(cut.TopsOutward);
    }

    [Fact]
    public void Of_two_texts_the_wider_gap_is_cut_and_the_longer_text_says_which_way_is_up()
    {
        var cut = RingLettering.Cut(Of(Line("BRACKHAVEN", 100, -5, 0.9), Line("QUAY", 150, 5, 0.9)), Map);
        Assert.NotNull(cut);
        Assert.False(cut.TopsOutward);
        Assert.Equal((170 + 50 + 360) / 2.0, (cut.Start.Degrees + 360) % 360, 0.01);
    }

    [Fact]
    public void The_cut_turns_with_the_lettering() =>
        Gen.Select(Gen.Double[0, 360], Gen.Double[-3, 3], Gen.Int[1, 30], Gen.Double[2, 9]).Sample((from, turn, count, step) =>
        {
            var text = new string('A', count);
            var degrees = turn * 50;
            var here = RingLettering.Cut(Of(Line(text, from, step, 0.9)), Map)!;
            var there = RingLettering.Cut(Of(Line(text, from + degrees, step, 0.9)), Map)!;
            Assert.True(Math.Abs(Math.IEEERemainder(there.Start.Degrees - here.Start.Degrees - degrees, 360)) < 1e-6);

            // No letter lies at the cut.
            for (var i = 0; i < count; i++)
            {
                var off = ((here.Start.Degrees - from - (i * step)) % 360 + 360) % 360;
                Assert.True(off >= step - 1e-6);
            }
        });

    [Fact]
    public void Nothing_read_gives_no_cut() => Assert.Null(RingLettering.Cut(Of(), Map));

    [Fact]
    public void Each_line_says_where_its_tops_point()
    {
        var lines = RingLettering.Lines(Of(Line("OUT", 10, 5, 0.9), Line("IN", 200, -5, 0.9)), Map);
        Assert.Equal([("OUT", true), ("IN", false)], lines.Select(line => (line.Line.Text, line.TopsOutward)));
    }

    [Fact]
    public void Pieces_that_the_photo_shows_give_way_to_the_whole_and_lettering_beside_the_ring_stays()
    {
        var beside = Flat("Brackhaven", 900, 60);
        var joint = RingLettering.Union(Of(Line("TOLLIVOR", 10, 8, 0.9)), Of(Line("TOLL", 10, 8, 0.95), beside), Plane);
        Assert.Equal(["TOLLIVOR", "Brackhaven"], joint.Lines.Select(line => line.Text));
    }

    [Fact]
    public void A_piece_that_the_photo_shows_twice_counts_once()
    {
        var joint = RingLettering.Union(Of(Line("TOLLIVOR", 10, 8, 0.9)), Of(Line("TOLLIV", 10, 8, 0.95), Line("TOLLI", 10, 8, 0.95)), Plane);
        Assert.Equal("TOLLIVOR", Assert.Single(joint.Lines).Text);
    }

    [Theory]
    [InlineData("TO", 0.99)]
    [InlineData("TOLLIVOR", 0.6)]
    public void Two_letters_or_unsure_ones_make_no_lettered_ring(string text, double probability)
    {
        var other = Of();
        Assert.Same(other, RingLettering.Union(Of(Line(text, 10, 8, probability)), other, Plane));
    }

    [Fact]
    public void What_the_photo_shows_more_clearly_stays_as_it_is()
    {
        var other = Of(Line("TOLLIVOR", 10, 8, 0.99));
        Assert.Same(other, RingLettering.Union(Of(Line("TOLLIVOR", 10, 8, 0.9)), other, Plane));
    }

    [Fact]
    public void An_opening_taken_for_an_O_is_left_out()
    {
        var opening = Flat("O", 220, 360);
        var joint = RingLettering.Union(Of(Line("TOLLIVOR", 10, 8, 0.9)), Of(opening), Plane);
        Assert.Equal("TOLLIVOR", Assert.Single(joint.Lines).Text);
    }

    private static PixelEllipse Ellipse(double major, double minor) => new(new PixelPoint(400, 400), PixelLength.FromPixels(major), PixelLength.FromPixels(minor), Angle.FromDegrees(25));

    private static Reading Of(params LineReading[] lines) => new("a reader", [.. lines], []);

    /// <summary>Letters so many degrees apart and as wide; a negative step runs anticlockwise, tops inward.</summary>
    private static LineReading Line(string text, double from, double step, double probability)
    {
        var (top, bottom) = step > 0 ? (0.9, 0.75) : (0.7, 0.85);
        var letters = text.Select((letter, i) =>
        {
            PixelPoint At(double radius, double place) => Plane.ToPhoto(radius, Angle.FromDegrees(from + (place * step)));
            return Letter(letter, probability, new Quad(At(top, i), At(top, i + 1), At(bottom, i + 1), At(bottom, i)));
        }).ToList();
        return Read(letters, probability);
    }

    private static LineReading Flat(string text, double y, double high)
    {
        var quad = new Quad(new(300, y), new(500, y), new(500, y + high), new(300, y + high));
        return Read([.. text.Select(letter => Letter(letter, 0.9, quad))], 0.9);
    }

    private static Letter Letter(char letter, double probability, Quad box) => new(letter.ToString(), Probability.From(probability), [], box, box);

    private static LineReading Read(List<Letter> letters, double probability)
    {
        var box = letters[0].InPhoto;
        var line = new LetteringLine(new GrayImage(1, 1, [0]), new FlatStripMap(1), box, box, new LineDirection(default, false, false), PixelLength.FromPixels(30), Probability.One);
        return new LineReading(line, [.. letters], Probability.From(probability), null);
    }
}
