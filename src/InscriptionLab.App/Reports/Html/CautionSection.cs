namespace InscriptionLab.App.Reports.Html;

/// <summary>The cautions.</summary>
internal static class CautionSection
{
    internal static void Write(Markup page)
    {
        page.Open("section", ("class", "cautions")).Element("h3", "Take care").Open("ul");
        foreach (var sentence in Cautions.Sentences)
        {
            page.Element("li", sentence);
        }

        page.Close("ul").Close("section");
    }
}
