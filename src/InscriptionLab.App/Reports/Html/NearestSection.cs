using System.Collections.Generic;
using InscriptionLab.App.Records;
using InscriptionLab.Comparison;
using InscriptionLab.Findings;

namespace InscriptionLab.App.Reports.Html;

/// <summary>The nearest forms of the list, laid beside the reading. Letters that differ are framed, underlined and named in words, not only coloured.</summary>
internal static class NearestSection
{
    private const string NoLetter = "\u00B7";

    internal static void Write(Markup page, Finding finding)
    {
        if (finding.Nearest.Length == 0)
        {
            return;
        }

        page.Open("section").Element("h3", "Nearest forms of the list");
        foreach (var nearest in finding.Nearest)
        {
            One(page, nearest);
        }

        page.Close("section");
    }

    private static void One(Markup page, NearestForm nearest)
    {
        var form = nearest.Form;
        var places = FormBesideReading.Of(nearest);
        page.Open("div", ("class", "form"))
            .Open("p").Element("strong", form.Form, ("class", "text-inline"))
            .Text($" {form.Maker}, {Words.For(form.Status)}").Close("p")
            .Open("div", ("class", "scroll")).Open("table", ("class", "aligned"));
        Row(page, "list", places, place => place.Attested);
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
