using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.App.Reports.Html;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>Puts a paper out as one web page that needs nothing beside itself; it prints well.</summary>
internal static class HtmlPaper
{
    internal static string Of(Paper paper)
    {
        var page = new Markup();
        PageFrame.Open(page, paper.Title, FontFaces() + Resources.Text("InscriptionLab.App.Reports.Papers.paper.css"));
        foreach (var part in paper.Blocks)
        {
            page.Open("article", ("class", "sheet"));
            foreach (var block in part)
            {
                Write(page, block);
            }

            page.Close("article");
        }

        page.Element("p", $"{paper.Program}, {paper.Made:yyyy-MM-dd HH:mm zzz}", ("class", "note"));
        return PageFrame.Close(page);
    }

    private static void Write(Markup page, Block block)
    {
        switch (block)
        {
            case Block.Heading heading:
                page.Element(Invariant($"h{heading.Rank + 1}"), heading.Text);
                break;
            case Block.Sentences sentences:
                page.Open("ul");
                foreach (var text in sentences.Texts)
                {
                    page.Element("li", text);
                }

                page.Close("ul");
                break;
            case Block.Aside aside:
                page.Element("p", aside.Text, ("class", "note"));
                break;
            case Block.Outcome outcome:
                page.Open("p", ("class", "outcome")).Element("span", outcome.Sign, ("class", "sign"), ("aria-hidden", "true")).Element("strong", outcome.Text).Close("p");
                break;
            case Block.Lettering lettering:
                page.Element("p", lettering.Text, ("class", "lettering"));
                break;
            case Block.Facts facts:
                page.Open("table", ("class", "facts"));
                foreach (var (name, value) in facts.Rows)
                {
                    page.Open("tr").Element("th", name, ("scope", "row")).Element("td", value).Close("tr");
                }

                page.Close("table");
                break;
            case Block.Grid grid:
                Grid(page, grid);
                break;
            case Block.Figure figure:
                Figure(page, figure.Picture);
                break;
            case Block.Letters letters:
                Letters(page, letters);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block, "No way to show this block.");
        }
    }

    private static void Grid(Markup page, Block.Grid grid)
    {
        page.Open("div", ("class", "scroll"), ("tabindex", "0")).Open("table", ("class", "grid")).Open("tr");
        foreach (var head in grid.Head)
        {
            page.Element("th", head, ("scope", "col"));
        }

        page.Close("tr");
        foreach (var row in grid.Rows)
        {
            page.Open("tr");
            foreach (var cell in row)
            {
                page.Element("td", cell);
            }

            page.Close("tr");
        }

        page.Close("table").Close("div");
    }

    private static void Figure(Markup page, PaperPicture picture)
    {
        page.Open("figure").OpenDrawing(picture.Width, picture.Height, picture.Caption, "picture")
            .Picture("jpeg", picture.File, picture.Width, picture.Height, string.Empty).Open("g", ("class", "marks"));
        foreach (var mark in picture.Marks)
        {
            page.Empty(mark.Closed ? "polygon" : "polyline", ("points", string.Join(' ', mark.Points.Select(point => Invariant($"{point.X:0.#},{point.Y:0.#}")))));
        }

        page.Close("g").Close("svg");
        if (picture.PixelsPerMillimetre is { } density && ScaleBar.For(picture.Width / density) is { } bar)
        {
            page.Open("p", ("class", "bar")).Element("span", string.Empty, ("style", Invariant($"width:{100 * bar.Millimetres * density / picture.Width:0.###}%"))).Text(bar.Text).Close("p");
        }

        page.Element("figcaption", picture.Caption).Close("figure");
    }

    private static void Letters(Markup page, Block.Letters letters)
    {
        page.Open("ol", ("class", letters.WithForm ? "letters beside" : "letters"));
        foreach (var cell in letters.Cells)
        {
            page.Open("li", ("class", cell.Differs ? "differs" : cell.Read == " " ? "space" : "same"));
            if (cell.Picture is { } cut)
            {
                page.Empty("img", ("src", "data:image/png;base64," + Convert.ToBase64String(cut.File)), ("alt", string.Empty));
            }
            else
            {
                page.Element("span", string.Empty, ("class", "no-picture"));
            }

            page.Element("span", cell.Read.Length == 0 ? "\u00b7" : cell.Read, ("class", "read"));
            page.Element("span", letters.WithForm ? cell.Form.Length == 0 ? "\u00b7" : cell.Form : cell.Sure, ("class", letters.WithForm ? "read form" : "sure")).Close("li");
        }

        page.Close("ol");
    }

    private static string FontFaces() => string.Concat(new List<(string Family, int Weight, string Face)>
    {
        ("Lab Sans", 400, "atkinson-hyperlegible-next-400-normal"),
        ("Lab Sans", 600, "atkinson-hyperlegible-next-600-normal"),
        ("Lab Serif", 400, "libertinus-serif-400-normal"),
    }.Select(font => Invariant($"@font-face{{font-family:\"{font.Family}\";font-weight:{font.Weight};src:url(data:font/ttf;base64,{Convert.ToBase64String(PdfFonts.Bytes(font.Face))}) format(\"truetype\")}}\n")));
}
