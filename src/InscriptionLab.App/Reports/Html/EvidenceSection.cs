using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Evidence;

namespace InscriptionLab.App.Reports.Html;

/// <summary>The weighing under three propositions: items with ratios, reasons and sources; the years; the words for ratios.</summary>
internal static class EvidenceSection
{
    internal static void Write(Markup page, EvidenceReport report)
    {
        if (report.IsEmpty)
        {
            return;
        }

        page.Open("section", ("class", "evidence")).Element("h3", "How strongly the evidence speaks");
        if (!report.Items.IsEmpty)
        {
            Sentences(page, EvidenceWords.Propositions);
            Items(page, report);
        }

        // The statements of the items stand in the table already.
        Sentences(page, [.. report.Sentences.Skip(report.Items.Length)]);
        page.Open("details", ("open", "open")).Element("summary", "The words for ratios").Element("p", Findings.VerbalScale.Note);
        Sentences(page, EvidenceSentences.Scale);
        page.Close("details").Close("section");
    }

    private static void Items(Markup page, EvidenceReport report)
    {
        page.Open("div", ("class", "scroll")).Open("table").Open("thead").Open("tr").Element("th", "what was seen", ("scope", "col"));
        foreach (var ratio in report.Ratios)
        {
            page.Element("th", EvidenceWords.NameOf(ratio), ("scope", "col"));
        }

        page.Element("th", "rests on", ("scope", "col")).Element("th", "would change with", ("scope", "col")).Close("tr").Close("thead").Open("tbody");
        foreach (var item in report.Items)
        {
            Row(page, item.Statement, item.Ratios, $"{item.Weight.Basis}: {item.Weight.Source}", item.Weight.WouldChange);
        }

        Row(page, "all together", report.Ratios, report.Ratios.Any(ratio => ratio.IsCapped) ? "capped by the number of rows for the house" : "the product", "any of the above");
        page.Close("tbody").Close("table").Close("div");
    }

    private static void Row(Markup page, string statement, ImmutableArray<PairRatio> ratios, string basis, string change)
    {
        page.Open("tr").Element("th", statement, ("scope", "row"));
        foreach (var ratio in ratios)
        {
            page.Element("td", EvidenceWords.ValueOf(ratio));
        }

        page.Element("td", basis).Element("td", change).Close("tr");
    }

    private static void Sentences(Markup page, ImmutableArray<string> sentences)
    {
        page.Open("ul");
        foreach (var sentence in sentences)
        {
            page.Element("li", sentence);
        }

        page.Close("ul");
    }
}
