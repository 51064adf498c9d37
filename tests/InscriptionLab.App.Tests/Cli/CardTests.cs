using System;
using System.IO;
using System.Linq;
using UglyToad.PdfPig;
using Xunit;

namespace InscriptionLab.App.Tests.Cli;

public sealed class CardTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    /// <summary>ISO 216: A4 is 210 by 297 mm; ISO 32000: 72 points to the inch.</summary>
    [Fact]
    public void The_card_is_one_page_of_A4_whose_squares_and_check_line_have_their_true_size()
    {
        var file = _folder.File("card.pdf");

        Assert.Equal(0, ProgramRun.Of("card", file).Code);

        using var document = PdfDocument.Open(file);
        var page = Assert.Single(document.GetPages());
        Assert.Equal(210, Millimetres(page.Width), 0.3);
        Assert.Equal(297, Millimetres(page.Height), 0.3);
        var areas = page.Paths.Select(path => path.GetBoundingRectangle()).Where(box => box is not null).Select(box => box!.Value).ToArray();

        // The check line is the widest area; each square has a border of 10 mm on top and below.
        Assert.Equal(100, Millimetres(areas.Max(box => box.Width)), 0.01);
        Assert.True(areas.Count(box => Math.Abs(Millimetres(box.Width) - 10) < 0.01) >= 24);
        Assert.Contains("99.7mm", page.Text, StringComparison.Ordinal);
        Assert.Contains("Sun", page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_card_is_a_pdf() => Assert.Equal(2, ProgramRun.Of("card", _folder.File("card.png")).Code);

    [Fact]
    public void A_card_that_cannot_be_written_costs_one_sentence()
    {
        var run = ProgramRun.Of("card", Path.Combine(_folder.File("nowhere"), "card.pdf"));

        Assert.Equal(1, run.Code);
        BadInputTests.IsOneSentenceAbout("card.pdf", run);
    }

    private static double Millimetres(double points) => points / 72 * 25.4;
}
