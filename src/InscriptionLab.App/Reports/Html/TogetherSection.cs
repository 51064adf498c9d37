using System.IO;
using System.Linq;
using InscriptionLab.App.Examining;
using InscriptionLab.Gathering;
using InscriptionLab.Vision.Pictures;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports.Html;

/// <summary>What several photos gave together: the finding over the joint reading, the strip that they were joined to, and why they belong together.</summary>
internal static class TogetherSection
{
    internal static void Write(Markup page, SetExamination set, int index)
    {
        var how = set.Kind == SetKind.Raking ? "one view under different lamps" : "the tube turned between the photos";
        page.Open("article").Element("h2", $"{Counted(set.Members.Length, "photo", "photos")} read together: {how}", ("class", "photo-name"));
        FindingSection.Write(page, set.Finding);
        NearestSection.Write(page, set.Finding, set.Reading, Invariant($"set{index}"));
        if (set.Mosaic is { } mosaic)
        {
            page.Open("section").Element("h3", "The tube laid flat, from all photos")
                .Open("figure").OpenDrawing(mosaic.Image.Width, mosaic.Image.Height, "The surface of the tube laid flat, joined from several photos", "picture")
                .Picture("jpeg", PictureEncoder.ToJpeg(mosaic.Image), mosaic.Image.Width, mosaic.Image.Height, Invariant($"set-strip{index}"))
                .Close("svg")
                .Element("figcaption", "Along the tube from left to right, round the tube from top to bottom, one scale in both; past a full turn the first part is shown again. Each place is taken from the photo that shows it best lit and most squarely.")
                .Close("figure").Close("section");
        }

        if (set.Relief is { } relief)
        {
            ReliefSection.Write(page, relief, set.Reading, index);
        }

        page.Open("section").Element("h3", "Why these photos belong together").Open("ul");
        page.Element("li", string.Join(", ", set.Members.Select(member => Path.GetFileName(member.Photo.File))));
        foreach (var reason in set.Reasons)
        {
            page.Element("li", reason);
        }

        page.Close("ul").Close("section");
        EvidenceSection.Write(page, set.Evidence);
        LetteringSection.Write(page, set.Reading, Invariant($"set{index}"), []);
        page.Close("article");
    }
}
