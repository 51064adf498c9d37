using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.Strips;
using Xunit;

namespace InscriptionLab.Core.Tests.Readings;

public sealed class ReadingUnionTests
{
    [Fact]
    public void A_line_that_only_the_photo_shows_is_added_in_reading_order()
    {
        var joint = ReadingUnion.Of(Of(Line("LONDON", 0.9, 100)), Of(Line("Harvick", 0.9, 50), Line("LONDON", 0.9, 101)));
        Assert.Equal(["Harvick", "LONDON"], joint.Lines.Select(line => line.Text));
    }

    [Fact]
    public void A_line_that_both_show_as_clearly_is_the_unrolled_one()
    {
        var unrolled = Of(Line("Harvick", 0.9, 50));
        Assert.Same(unrolled, ReadingUnion.Of(unrolled, Of(Line("Harwick", 0.9, 51))));
    }

    [Fact]
    public void A_line_that_the_photo_shows_more_clearly_is_taken_whole()
    {
        var joint = ReadingUnion.Of(Of(Line("arvick", 0.8, 50)), Of(Line("Harvick", 0.9, 51)));
        Assert.Equal("Harvick", Assert.Single(joint.Lines).Text);
    }

    [Fact]
    public void Two_pieces_of_one_line_stay_when_together_they_are_clearer()
    {
        var joint = ReadingUnion.Of(Of(Line("Har", 0.99, 50, 0), Line("vick", 0.99, 50, 60)), Of(Line("Harvick", 0.8, 50)));
        Assert.Equal(["Har", "vick"], joint.Lines.Select(line => line.Text));
    }

    [Fact]
    public void Nothing_beside_nothing_stays_nothing() => Assert.Empty(ReadingUnion.Of(Of(), Of()).Lines);

    [Fact]
    public void Joining_a_reading_with_itself_changes_nothing()
    {
        var reading = Of(Line("Harvick", 0.7, 50), Line("LONDON", 0.6, 90));
        Assert.Same(reading, ReadingUnion.Of(reading, reading));
    }

    private static Reading Of(params LineReading[] lines) => new("a reader", [.. lines], []);

    private static LineReading Line(string text, double probability, double y, double x = 0)
    {
        const double Wide = 20;
        const double High = 30;
        var quad = new Quad(new(x, y), new(x + (Wide * text.Length), y), new(x + (Wide * text.Length), y + High), new(x, y + High));
        var letters = text.Select(letter => new Letter(letter.ToString(), Probability.From(probability), [], quad, quad)).ToImmutableArray();
        var line = new LetteringLine(
            new GrayImage(1, 1, [0]), new FlatStripMap(1), quad, quad, new LineDirection(Angle.FromDegrees(0), false, false), PixelLength.FromPixels(High), Probability.One);
        return new LineReading(line, letters, Probability.From(probability), null);
    }
}
