using System;
using System.Collections.Immutable;
using InscriptionLab.App.Records;
using InscriptionLab.Findings;

namespace InscriptionLab.App.Reports.Html;

/// <summary>The finding: outcome, reasons, what is left open, how to photograph again.</summary>
internal static class FindingSection
{
    internal static void Write(Markup page, Finding finding)
    {
        var word = Words.For(finding.Outcome);
        page.Open("section", ("class", "finding " + word))
            .Open("p", ("class", "outcome")).Element("span", SignOf(finding.Outcome), ("class", "sign"), ("aria-hidden", "true"))
            .Element("strong", HeadingOf(finding.Outcome)).Close("p");
        Sentences(page, "Reasons", finding.Reasons);
        Sentences(page, "What the photo cannot decide", finding.CannotDecide);
        Sentences(page, "How to photograph it again", finding.Retake);
        page.Close("section");
    }

    private static void Sentences(Markup page, string heading, ImmutableArray<string> sentences)
    {
        if (sentences.Length == 0)
        {
            return;
        }

        page.Element("h3", heading).Open("ul");
        foreach (var sentence in sentences)
        {
            page.Element("li", sentence);
        }

        page.Close("ul");
    }

    internal static string HeadingOf(FindingOutcome outcome) => outcome switch
    {
        FindingOutcome.Agrees => "The lettering agrees with an attested form",
        FindingOutcome.Differs => "The lettering differs from every attested form",
        FindingOutcome.Undecided => "This photo cannot decide",
        FindingOutcome.NothingRead => "No lettering was read",
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "No heading for this outcome."),
    };

    /// <summary>A sign beside the words, so that an outcome is not told by colour alone.</summary>
    internal static string SignOf(FindingOutcome outcome) => outcome switch
    {
        FindingOutcome.Agrees => "=",
        FindingOutcome.Differs => "\u2260",
        FindingOutcome.Undecided => "?",
        _ => "\u2014",
    };
}
