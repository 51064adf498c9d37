using System.Linq;
using InscriptionLab.Advice;
using InscriptionLab.App.Records;
using InscriptionLab.App.Reports;
using Xunit;

namespace InscriptionLab.App.Tests.Advising;

/// <summary>Letters that are burnt out in a photo are said to be, and no others. Boxes and truth of the letters come from the truth files.</summary>
public sealed class BurntLetterTests(ITestOutputHelper output)
{
    [Fact]
    public void Letters_burnt_out_in_the_samples_are_told_and_no_others()
    {
        var (burnt, told, missed, wrong) = (0, 0, 0, 0);
        foreach (var sample in new[] { "glare.jpg", SampleImages.RomanTransposed, SampleImages.RomanThreeLines, "italic.jpg", "script.jpg", "sans.jpg", "blackletter.jpg" })
        {
            var truth = SampleImages.TruthOf(sample);
            var lines = RecordMaker.Of(TruthExaminations.Of(sample)).Lines;
            foreach (var (letter, i) in lines.SelectMany((line, number) => line.Letters.Select((letter, place) => (letter, truth.Letters.Where(one => one.Line == number).ElementAt(place).WashedOut))))
            {
                (burnt, told) = (burnt + (i ? 1 : 0), told + (letter.BlownOut is null ? 0 : 1));
                (missed, wrong) = (missed + (i && letter.BlownOut is null ? 1 : 0), wrong + (!i && letter.BlownOut is not null ? 1 : 0));
            }
        }

        output.WriteLine($"{burnt} burnt out, {told} told, {missed} missed, {wrong} wrong");
        Assert.True(burnt >= 5, $"only {burnt} letters are burnt out in the samples");
        Assert.Equal((0, 0), (missed, wrong));
    }

    [Fact]
    public void The_report_names_them_with_their_line()
    {
        var examination = TruthExaminations.Of("glare.jpg");

        Assert.Contains(examination.Advice.Measures.Burnt, place => place.Part == BurntPart.Letter);
        Assert.Contains("blown out", TextReport.Of(examination), System.StringComparison.Ordinal);
    }
}
