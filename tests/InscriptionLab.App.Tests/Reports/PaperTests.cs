using System;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Text;
using InscriptionLab.App.Reports;
using InscriptionLab.App.Reports.Papers;
using InscriptionLab.Comparison;
using InscriptionLab.Findings;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Pictures;
using PdfSharp.Pdf.IO;
using Xunit;

namespace InscriptionLab.App.Tests.Reports;

public sealed class PaperTests
{
    private const string Hostile = "<script>alert(1)</script>\"><svg onload=x>";
    private static readonly DateTimeOffset Noon = new(2026, 3, 1, 12, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_printed_report_carries_its_typefaces_and_as_many_pages_as_it_needs()
    {
        var one = PdfPaper.Of(FullReport.Of("Piece", [Shown("Piece")], Noon, "InscriptionLab"));
        var lot = PdfPaper.Of(FullReport.Of("Lot", [.. Enumerable.Range(0, 5).Select(i => Shown($"Piece {i}"))], Noon, "InscriptionLab"));

        Assert.Contains("/FontFile2", Encoding.Latin1.GetString(one), StringComparison.Ordinal);
        Assert.True(Pages(lot) >= Pages(one) + 4);
    }

    [Fact]
    public void The_short_form_is_one_page_an_object() =>
        Assert.Equal(3, Pages(PdfPaper.Of(ShortForm.Of("Lot", [Shown("A"), Shown("B"), Shown("C")], Noon, "InscriptionLab"))));

    [Fact]
    public void The_short_form_asks_every_category_of_the_standard()
    {
        var page = HtmlPaper.Of(ShortForm.Of("A", [Shown("A")], Noon, "InscriptionLab"));

        // Object ID checklist (J. Paul Getty Trust, 1999): its categories, from memory of the published checklist.
        foreach (var category in new[] { "Type of object", "Materials and techniques", "Measurements", "Inscriptions and markings", "Distinguishing features", "Title", "Subject", "Date or period", "Maker" })
        {
            Assert.Contains($">{category}<", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_web_report_needs_nothing_beside_itself_and_lets_no_markup_in()
    {
        var page = HtmlPaper.Of(FullReport.Of(Hostile, [Shown(Hostile)], Noon, "InscriptionLab"));

        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("onload=x>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("src=\"http", page, StringComparison.Ordinal);
        Assert.DoesNotContain("url(http", page, StringComparison.Ordinal);
        Assert.Contains("data:font/ttf;base64,", page, StringComparison.Ordinal);
    }

    [Fact]
    public void What_stays_open_and_where_it_comes_from_stand_in_the_report()
    {
        var page = HtmlPaper.Of(FullReport.Of("A", [Shown("A")], Noon, "InscriptionLab"));

        Assert.Contains("Whether a later hand cut it.", page, StringComparison.Ordinal);
        Assert.Contains(new string('a', 64), page, StringComparison.Ordinal);
        Assert.Contains("very strong support", page, StringComparison.Ordinal);
        Assert.Contains(Cautions.Sentences[0], page, StringComparison.Ordinal);
        Assert.Contains("10 mm, in the plane of the rim", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_scale_bar_is_round_and_a_third_of_the_picture_at_most()
    {
        Assert.Equal(10, ScaleBar.For(40)!.Millimetres);
        Assert.Equal(20, ScaleBar.For(60)!.Millimetres);
        Assert.Null(ScaleBar.For(0.1));
    }

    private static int Pages(byte[] file)
    {
        using var stream = new MemoryStream(file);
        using var opened = PdfReader.Open(stream, PdfDocumentOpenMode.Import);
        return opened.PageCount;
    }

    private static PaperObject Shown(string name)
    {
        var picture = PictureEncoder.ToJpeg(new GrayImage(400, 200, new byte[80_000]));
        var cut = new PaperCut(PictureEncoder.ToPng(new GrayImage(8, 12, new byte[96])), 8, 12);
        ImmutableArray<PaperLetter> letters = [.. "Sallowby".Select(letter => new PaperLetter(letter.ToString(), 0.8, "e 12 %", cut, null))];
        var odd = new LetterDifference("y", "b", Probability.From(0.9), 0, 7);
        return new PaperObject(name, null, Hostile, null,
        [
            new PaperPhoto
            {
                Name = name + ".jpg",
                Sha256 = new string('a', 64),
                Width = 400,
                Height = 200,
                Pictures = [new PaperPicture(picture, 400, 200, [new PaperMark([new PixelPoint(1, 1), new PixelPoint(90, 90), new PixelPoint(5, 60)], true)], 10, "A picture.")],
                Lines = [new PaperLine("Sallo\u0323wby", letters, "A. Harbourer reads: Sallowby")],
                Finding = new PaperFinding(FindingOutcome.Differs, ["One letter differs."], ["Whether a later hand cut it."], [], [new PaperForm("Sallowyy", "Sallowby, attested", "A ratio.", [new AlignedPlace("y", "b", odd)], ["b stands in place of y."])]),
                Measures = [new PaperMeasure("rim", "(40.00 \u00b1 0.05) mm", "= 1.575 in", [["scale", "0.02 mm", "0.0200", new string('w', 400)]])],
                Versions = [("program", "InscriptionLab")],
            },
        ]);
    }
}
