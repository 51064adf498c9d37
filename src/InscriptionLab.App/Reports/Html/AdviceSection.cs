using System.Collections.Immutable;
using InscriptionLab.Advice;

namespace InscriptionLab.App.Reports.Html;

/// <summary>What limits a photo, with its figures, and the steps to a better one.</summary>
internal static class AdviceSection
{
    internal static void Write(Markup page, PhotoAdvice advice)
    {
        page.Open("section", ("class", "advice")).Element("h3", "What limits this photo");
        if (LightWords.Of(advice.Measures) is { } light)
        {
            page.Element("p", "Light: " + light, ("class", "note"));
        }

        if (OutlineWords.Of(advice.Measures) is { } outlines)
        {
            page.Element("p", outlines, ("class", "note"));
        }

        if (advice.Worst is null)
        {
            page.Element("p", "Nothing that was measured limits the reading.");
        }

        foreach (var limit in advice.Limits)
        {
            page.Open("p", ("class", "limit")).Element("strong", limit.Sentence).Text(" ")
                .Element("span", AdviceFigures.Of(limit), ("class", "note"), ("title", limit.Source)).Close("p")
                .Open("ol");
            foreach (var step in limit.Steps)
            {
                page.Element("li", step);
            }

            page.Close("ol");
        }

        if (advice.Limits.Length > 0)
        {
            page.Element("p", string.Join(' ', advice.Cautions), ("class", "note"));
        }

        page.Close("section");
    }

    /// <summary>Writes what to ask a seller for.</summary>
    internal static void WriteRequests(Markup page, ImmutableArray<string> requests)
    {
        if (requests.IsEmpty)
        {
            return;
        }

        page.Open("section").Element("h3", "Photos to ask the seller for").Open("ol");
        foreach (var request in requests)
        {
            page.Element("li", request);
        }

        page.Close("ol").Close("section");
    }
}
