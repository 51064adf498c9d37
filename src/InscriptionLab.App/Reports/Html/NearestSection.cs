using System.Collections.Generic;
using System.Linq;
using InscriptionLab.App.Records;
using InscriptionLab.Comparison;
using InscriptionLab.Findings;
using InscriptionLab.Readings;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports.Html;

/// <summary>The nearest forms of the list, laid beside the reading. Letters that differ are framed, underlined and named in words, not only coloured.</summary>
internal static class NearestSection
{
    private const string NoLetter = "\u00B7";

    /// <param name="page">The page.</param>
    /// <param name="finding">The finding.</param>
    /// <param name="reading">The reading that the forms were laid beside.</param>
    /// <param name="prefix">Prefix of the names under which the pictures of its lines lie in the page.</param>
    internal static void Write(Markup page, Finding finding, Reading reading, string prefix)
    {
        if (finding.Nearest.Length == 0)
        {
            return;
        }

        page.Open("section").Element("h3", "Nearest forms of the list");
        var limit = new JudgeOptions().NearLimit;
        var near = finding.Nearest.Where((nearest, index) => index == 0 || nearest.RelativeDistance <= limit).ToList();
        var others = finding.Nearest.Except(near).ToList();
        near.ForEach(nearest => One(page, nearest, reading, prefix));
        if (others.Count > 0)
        {
            page.Open("details", ("class", "farther")).Element("summary", Invariant($"Farther off, too many letters differ: {Counted(others.Count, "form", "forms")}"));
            others.ForEach(nearest => One(page, nearest, reading, prefix));
            page.Close("details");
        }

        page.Close("section");
    }

    private static void One(Markup page, NearestForm nearest, Reading reading, string prefix)
    {
        var form = nearest.Form;
        var places = FormBesideReading.Of(nearest);
        page.Open("div", ("class", "form"))
            .Open("p").Element("strong", form.Form, ("class", "text-inline"))
            .Text($" {form.Maker}, {Words.For(form.Status)}").Close("p")
            .Open("div", ("class", "scroll")).Open("table", ("class", "aligned"));
        Row(page, "list", places, place => place.Attested);
        Pictures(page, places, reading, prefix);
        Row(page, "read", places, place => place.Read);
        page.Close("table").Close("div");
        if (nearest.Differences.Length == 0)
        {
            page.Element("p", "No letter differs.", ("class", "note"));
        }
        else
        {
            page.Open("ul", ("class", "note"));
            foreach (var difference in nearest.Differences)
            {
                page.Element("li", DifferenceWords.For(difference));
            }

            page.Close("ul");
        }

        page.Close("div");
    }

    /// <summary>The picture of each letter between the attested letter and the letter read; nothing where no letter was read.</summary>
    private static void Pictures(Markup page, IReadOnlyList<AlignedPlace> places, Reading reading, string prefix)
    {
        page.Open("tr").Element("th", "cut", ("scope", "row"));
        foreach (var place in places)
        {
            page.Open("td", ("class", place.Difference is null ? "same" : "differs"));
            if (place.Read.Length > 0 && (place.Difference ?? place.Agreement) is { } at && at.LineIndex < reading.Lines.Length
                && at.LetterIndex < reading.Lines[at.LineIndex].Letters.Length && reading.Lines[at.LineIndex].Letters[at.LetterIndex] is { IsSpace: false } letter)
            {
                LetteringSection.Thumbnail(page, letter, LetteringSection.PictureOf(prefix, at.LineIndex));
            }

            page.Close("td");
        }

        page.Close("tr");
    }

    private static void Row(Markup page, string name, IReadOnlyList<AlignedPlace> places, System.Func<AlignedPlace, string> letter)
    {
        page.Open("tr").Element("th", name, ("scope", "row"));
        foreach (var place in places)
        {
            var shown = letter(place);
            page.Element("td", shown.Length == 0 ? NoLetter : shown, ("class", place.Difference is null ? "same" : "differs"));
        }

        page.Close("tr");
    }
}
