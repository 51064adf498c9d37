using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Advice;
using InscriptionLab.Readings;
using InscriptionLab.Vision.Pictures;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports.Html;

/// <summary>The lettering line by line: the line as the reader saw it, then one column a letter with its picture, probability and other candidates.</summary>
internal static class LetteringSection
{
    /// <summary>Room round a letter's picture, as a share of its height.</summary>
    private const double Margin = 0.15;

    internal static void Write(Markup page, Reading reading, string prefix, ImmutableArray<BurntPlace> burnt)
    {
        page.Open("section").Element("h3", "The lettering, letter by letter");
        if (reading.Lines.Length == 0)
        {
            page.Element("p", "No lettering was read.");
        }

        for (var i = 0; i < reading.Lines.Length; i++)
        {
            Line(page, reading.Lines[i], i, PictureOf(prefix, i), burnt);
        }

        if (reading.Style.Length > 0)
        {
            page.Element("p", "Style of the lettering: " + string.Join(", ", reading.Style.Select(style => $"{style.Style} {Percent(style.Probability)}")) + ".", ("class", "note"));
        }

        page.Close("section");
    }

    /// <summary>Gives the name under which the picture of a line lies in the page.</summary>
    internal static string PictureOf(string prefix, int line) => Invariant($"{prefix}-line{line}");

    private static void Line(Markup page, LineReading line, int index, string id, ImmutableArray<BurntPlace> burnt)
    {
        var crop = line.Line.Crop;
        page.Element("p", line.Text, ("class", "text"))
            .Open("figure", ("class", "line"))
            .OpenDrawing(crop.Width, crop.Height, "The line as the reader saw it", "crop")
            .Picture("png", PictureEncoder.ToPng(crop), crop.Width, crop.Height, id)
            .Close("svg").Close("figure")
            .Open("div", ("class", "scroll")).Open("table", ("class", "letters"));
        var letters = line.Letters.ToList();
        Row(page, letters, "picture", letter => Thumbnail(page, letter, id));
        Row(page, letters, "read", letter => page.Element("span", letter.Character, ("class", "glyph")));
        Row(page, letters, "sure", letter => Sure(page, letter));
        Row(page, letters, "or else", letter => Others(page, letter));
        page.Close("table").Close("div");
        foreach (var (name, sentence) in LineNotes.Of(line, index, burnt))
        {
            page.Element("p", $"{name}: {sentence}", ("class", "note"));
        }
    }

    private static void Row(Markup page, IEnumerable<Letter> letters, string name, Action<Letter> cell)
    {
        page.Open("tr").Element("th", name, ("scope", "row"));
        foreach (var letter in letters)
        {
            if (letter.IsSpace)
            {
                page.Element("td", string.Empty, ("class", "space"));
                continue;
            }

            page.Open("td");
            cell(letter);
            page.Close("td");
        }

        page.Close("tr");
    }

    /// <summary>Shows the part of a line's picture that holds a letter.</summary>
    internal static void Thumbnail(Markup page, Letter letter, string id)
    {
        var corners = Drawing.Corners(letter.InCrop).ToList();
        var (left, right) = (corners.Min(point => point.X), corners.Max(point => point.X));
        var (top, bottom) = (corners.Min(point => point.Y), corners.Max(point => point.Y));
        var margin = (bottom - top) * Margin;
        page.OpenDrawing(left - margin, top - margin, right - left + (2 * margin), bottom - top + (2 * margin), $"picture of the letter read as {letter.Character}", "thumb")
            .Empty("use", ("href", "#" + id)).Close("svg");
    }

    private static void Sure(Markup page, Letter letter) => page
        .Element("span", Percent(letter.Probability), ("class", "number"))
        .Open("span", ("class", "bar")).Empty("span", ("style", Invariant($"width:{letter.Probability.Value * 100:0.#}%"))).Close("span");

    private static void Others(Markup page, Letter letter)
    {
        foreach (var other in letter.Alternatives)
        {
            page.Open("span", ("class", "other"))
                .Element("span", other.Character.Length == 0 ? "nothing" : other.Character, ("class", other.Character.Length == 0 ? "none" : "glyph"))
                .Element("span", Percent(other.Probability), ("class", "number")).Close("span");
        }
    }
}
