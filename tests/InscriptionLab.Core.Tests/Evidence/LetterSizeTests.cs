using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Core.Tests.Comparison;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Readings;
using InscriptionLab.References;
using Xunit;

namespace InscriptionLab.Core.Tests.Evidence;

/// <summary>Height and spacing of letters as evidence, with letters whose boxes are drawn here: capitals 20 high, small letters 14, each 10 wide.</summary>
public sealed class LetterSizeTests
{
    private static readonly ReferenceList List = new("fabricated", string.Empty,
    [
        new ReferenceForm("TOLLIVER", "Tolliver", AttestationStatus.Attested) { LetterHeight = Length.FromMillimetres(2.4), LetterSpacing = 0.8 },
        new ReferenceForm("Tolliver", "Tolliver", AttestationStatus.Attested) { LetterHeight = Length.FromMillimetres(3), LetterSpacing = 0.5 },
        new ReferenceForm("Corvestri", "Corvestri", AttestationStatus.Attested),
    ]);

    private static readonly ImmutableDictionary<int, Measured> NoScale = ImmutableDictionary<int, Measured>.Empty;

    /// <summary>A line whose letters stand a step apart, middle to middle; a space takes a step too.</summary>
    private static LineReading Boxed(string text, double step)
    {
        var letters = Fabricated.Line(text).Letters;
        return Fabricated.Line(text) with
        {
            Letters = [.. letters.Select((letter, at) => letter.IsSpace ? letter : letter with { InCrop = Box(at * step, char.IsLower(letter.Character, 0) ? 14 : 20) })],
        };
    }

    private static Quad Box(double middle, double height) => new(new PixelPoint(middle - 5, 30 - height), new PixelPoint(middle + 5, 30 - height), new PixelPoint(middle + 5, 30), new PixelPoint(middle - 5, 30));

    private static EvidenceReport Report(LineReading line, Circumstances known, ReferenceList? list = null, EvidenceOptions? options = null)
    {
        var reading = Fabricated.Of(line);
        return new EvidenceWeigher(list ?? List, options).Weigh(reading, new Judge().Decide(new Comparer(list ?? List).Compare(reading)), known);
    }

    private static Circumstances High(double millimetres, double uncertainty) => Circumstances.None with
    {
        RunsAround = false,
        LetterHeights = NoScale.Add(0, new Measured(Length.FromMillimetres(millimetres), Length.FromMillimetres(uncertainty), 2)),
    };

    private static EvidenceItem? Item(EvidenceReport report, string feature) => report.Items.SingleOrDefault(item => item.Weight.Feature == feature);

    /// <summary>16 from letter to letter over 20 of height is 0.8 as listed for capitals; 0.8 x 0.85 = 0.68 and 0.8 x 1.15 = 0.92 still count as it.</summary>
    [Theory]
    [InlineData("TOLLIVER", 16, "as-attested")]
    [InlineData("TOLLIVER", 13.8, "as-attested")]
    [InlineData("TOLLIVER", 13.4, "other")]
    [InlineData("TOLLIVER", 18.2, "as-attested")]
    [InlineData("TOLLIVER", 18.6, "other")]
    [InlineData("Tolliver", 10, "as-attested")]
    [InlineData("Tolliver", 16, "other")]
    public void Spacing_is_compared_with_rows_in_the_same_case(string text, double step, string observation) =>
        Assert.Equal(observation, Item(Report(Boxed(text, step), Circumstances.None with { RunsAround = true }), "letter-spacing")!.Weight.Observation);

    /// <summary>Where no tube was laid flat, a quarter more or less still counts: 0.8 x 0.75 = 0.6, twelve from letter to letter.</summary>
    [Fact]
    public void Where_no_tube_was_laid_flat_spacing_may_be_further_off() =>
        Assert.Equal("as-attested", Item(Report(Boxed("TOLLIVER", 12.2), Circumstances.None), "letter-spacing")!.Weight.Observation);

    /// <summary>The wide space between two words, and the letters of a town beside the name, are no spacing of the name.</summary>
    [Fact]
    public void Only_steps_inside_the_words_of_the_name_count()
    {
        var list = List with { Forms = [.. List.Forms, new ReferenceForm("TOLLIVER & SON", "Tolliver", AttestationStatus.Attested) { LetterSpacing = 0.8 }] };
        var line = Boxed("TOLLIVER & SON XQ", 16);
        var far = line with { Letters = [.. line.Letters.Select((letter, at) => letter.IsSpace ? letter : letter with { InCrop = Moved(letter.InCrop, (at > 8 ? 40 : 0) + (at > 10 ? 40 : 0) + (at > 14 ? 17 * (at - 14) : 0)) })] };

        Assert.Contains("it is 0.80 of the height of a capital; the list has 0.8 for capitals of the house.", Item(Report(far, Circumstances.None, list), "letter-spacing")!.Statement, StringComparison.Ordinal);
    }

    /// <summary>2.4 mm is listed, and 3 mm; 2 mm lies 0.4 mm below, more than 15 % (0.36 mm), but not more than that and 0.3 mm of uncertainty together (0.47 mm).</summary>
    [Theory]
    [InlineData(2.4, 0.1, "as-attested")]
    [InlineData(3.3, 0.1, "as-attested")]
    [InlineData(2.0, 0.1, "other")]
    [InlineData(2.0, 0.3, "as-attested")]
    [InlineData(4.0, 0.2, "other")]
    public void Height_is_compared_where_a_scale_gives_it(double height, double uncertainty, string observation) =>
        Assert.Equal(observation, Item(Report(Fabricated.Line("TOLLIVER"), High(height, uncertainty)), "letter-height")!.Weight.Observation);

    [Fact]
    public void A_height_measured_by_hand_goes_before_that_of_the_photo()
    {
        var record = new ConstructionReader(ConstructionTable.Default).Read("record.csv", "feature,observation\nletter_height_mm,2.5\n"u8);
        var report = Report(Fabricated.Line("TOLLIVER"), High(9, 0.1) with { Construction = record });

        Assert.Equal("The tallest letter is 2.5 mm high; the list has 2.4 and 3.0 mm for the house.", Item(report, "letter-height")!.Statement);
        Assert.Null(Item(report, "measures"));
        Assert.Contains("'two' is not a number above zero", Assert.Throws<InscriptionLabException>(() => new ConstructionReader(ConstructionTable.Default).Read("record.csv", "feature,observation\nletter_height_mm,two\n"u8)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Missing_values_give_no_item()
    {
        var bare = List with { Forms = [.. List.Forms.Select(form => form with { LetterHeight = null, LetterSpacing = null })] };
        string[] sizes = ["letter-height", "letter-spacing"];
        void None(EvidenceReport report) => Assert.DoesNotContain(report.Items, item => sizes.Contains(item.Weight.Feature));

        // Neither scale nor boxes; a scale so rough that it tells nothing; boxes of too few letters, or without a capital; no values in the list, or in the other case only.
        None(Report(Fabricated.Line("TOLLIVER"), Circumstances.None));
        None(Report(Fabricated.Line("TOLLIVER"), High(2.4, 0.7)));
        var line = Boxed("TOLLIVER", 16);
        None(Report(line with { Letters = [.. line.Letters.Select((letter, at) => at < 3 ? letter : letter with { InCrop = default })] }, Circumstances.None));
        None(Report(Boxed("tolliver", 16), Circumstances.None));
        None(Report(Boxed("TOLLIVER", 16), High(2.4, 0.1), bare));
        var small = List with { Forms = [List.Forms[0] with { LetterHeight = null, LetterSpacing = null }, List.Forms[1] with { LetterHeight = null }] };
        None(Report(Boxed("TOLLIVER", 16), High(2.4, 0.1), small));
    }

    /// <summary>0.6 to 0.5 and 0.6 to 0.4: weak, an opinion; and cut off wherever the bound on opinions lies lower still.</summary>
    [Fact]
    public void Sizes_speak_little_and_never_beyond_the_bound_on_opinions()
    {
        foreach (var (step, height) in new[] { (16.0, 2.4), (30.0, 9.0) })
        {
            var items = Report(Boxed("TOLLIVER", step), High(height, 0.1)).Items.Where(item => item.Weight.Feature.StartsWith("letter-", StringComparison.Ordinal)).ToArray();
            Assert.Equal(2, items.Length);
            Assert.All(items, item => Assert.Equal("opinion", item.Weight.Basis));
            Assert.All(items.SelectMany(item => item.Ratios), ratio => Assert.InRange(Math.Abs(ratio.Log10Ratio), 0.01, new EvidenceOptions().MaximumLog10OfOpinion));

            var bounded = Report(Boxed("TOLLIVER", step), High(height, 0.1), null, new EvidenceOptions { MaximumLog10OfOpinion = 0.05 });
            Assert.All(bounded.Items.Where(item => item.Weight.Feature.StartsWith("letter-", StringComparison.Ordinal)).SelectMany(item => item.Ratios), ratio => Assert.Equal((0.05, true), (Math.Abs(ratio.Log10Ratio), ratio.IsCapped)));
        }
    }

    [Fact]
    public void A_blank_record_asks_for_the_height() =>
        Assert.Contains("\nletter_height_mm,,a number,", new ConstructionReader(ConstructionTable.Default).Blank(), StringComparison.Ordinal);

    private static Quad Moved(Quad box, double by)
    {
        PixelPoint Of(PixelPoint point) => new(point.X + by, point.Y);
        return new Quad(Of(box.TopLeft), Of(box.TopRight), Of(box.BottomRight), Of(box.BottomLeft));
    }
}
