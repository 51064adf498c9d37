using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.App.Demo;
using InscriptionLab.Comparison;
using InscriptionLab.Findings;
using InscriptionLab.Imaging;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.References;
using InscriptionLab.Strips;
using Xunit;

namespace InscriptionLab.App.Tests.Demo;

/// <summary>The demonstration list beside lines as a perfect reader would read them: the choice of the limits of nearness rests on these.</summary>
public sealed class DemoFindingTests
{
    private static readonly Comparer Comparer = new(DemoReferences.Load());

    [Theory]
    [InlineData("LONDON")]
    [InlineData("London")]
    [InlineData("À PARIS")]
    [InlineData("Monteverra")]
    [InlineData("Marlhaven")]
    [InlineData("Port Tressick")]
    [InlineData("IN NEUWARTH")]
    [InlineData("Brackhaven")]
    [InlineData("14 CAWDRY LANE")]
    [InlineData("Mallow Street")]
    [InlineData("MAKER TO THE NAVY")]
    [InlineData("Day or Night")]
    [InlineData("Achromatic")]
    [InlineData("IMPROVED")]
    [InlineData("Portable")]
    [InlineData("No. 1409")]
    [InlineData("Patent Elastic Tube")]
    public void Towns_streets_and_trade_words_come_near_to_no_form(string line)
    {
        var comparison = Comparer.Compare(Reading(line));

        Assert.All(comparison.Nearest, form => Assert.True(form.RelativeDistance > new JudgeOptions().NearLimit, $"{line} is {form.RelativeDistance} from {form.Form.Form}"));
        Assert.Equal(FindingOutcome.Undecided, new Judge().Decide(comparison).Outcome);
    }

    [Theory]
    [InlineData("CALDERWYNN & CO LONDON", "CALDERWYN & CO")]
    [InlineData("Fennimarcch Monteverra", "Fennimarch")]
    [InlineData("Thos. Barckwell", "Thos. Brackwell")]
    [InlineData("Wm. Hathersedtge LONDON", "Wm. Hathersedge")]
    [InlineData("PNICHBOURNE", "PINCHBOURNE")]
    [InlineData("QUILLAEN IN NEUWARTH", "QUILLANE")]
    [InlineData("LUHDGROVE", "LUDGROVE")]
    [InlineData("Fennimarcb", "Fennimarch")]
    [InlineData("Kesselbarndt", "Kesselbrandt")]
    [InlineData("OMBRESALL À PARIS", "OMBERSALL")]
    [InlineData("Tolliveer", "Tolliver")]
    [InlineData("Pellowic", "Pellowick")]
    [InlineData("FENNIMRACH", "FENNIMARCH")]
    [InlineData("Finnimarch LONDON", "Fennimarch")]
    [InlineData("Stannikk", "Stannick")]
    [InlineData("Tloliver", "Tolliver")]
    public void Every_misspelling_of_the_sample_photos_differs_from_the_form_that_is_meant(string line, string form)
    {
        var comparison = Comparer.Compare(Reading(line));

        Assert.Equal(FindingOutcome.Differs, new Judge().Decide(comparison).Outcome);
        Assert.Equal(form, comparison.Nearest.First(nearest => nearest.Form.Status == AttestationStatus.Attested).Form.Form);
    }

    [Fact]
    public void Every_attested_form_agrees_with_itself_and_every_copy_differs()
    {
        foreach (var form in DemoReferences.Load().Forms)
        {
            var expected = form.Status == AttestationStatus.Attested ? FindingOutcome.Agrees : FindingOutcome.Differs;

            Assert.Equal((form.Form, expected), (form.Form, new Judge().Decide(Comparer.Compare(Reading(form.Form))).Outcome));
        }
    }

    [Fact]
    public void No_two_houses_have_forms_near_to_each_other()
    {
        var list = DemoReferences.Load();
        var attested = list.Forms.Where(form => form.Status == AttestationStatus.Attested).ToImmutableArray();
        foreach (var form in attested)
        {
            var others = new Comparer(list with { Forms = [.. attested.Where(other => other.Maker != form.Maker)] });

            Assert.All(others.Compare(Reading(form.Form)).Nearest, other => Assert.True(other.RelativeDistance > new JudgeOptions().NearLimit, $"{form.Form} is {other.RelativeDistance} from {other.Form.Form}"));
        }
    }

    private static Reading Reading(string text)
    {
        const double Sure = 0.999;
        var place = new LetteringLine(new GrayImage(1, 1, [0]), new FlatStripMap(1), default, default, new LineDirection(default, false, false), PixelLength.FromPixels(40), Probability.One);
        var letters = text.Select(letter => new Letter(letter.ToString(), Probability.From(Sure), [], default, default)).ToImmutableArray();
        return new Reading("by hand", [new LineReading(place, letters, Probability.From(Sure), null)], []);
    }
}
