using System.Linq;
using InscriptionLab.App.Examining;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Pictures;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports.Html;

/// <summary>The photo with tube and letters marked, and the surface laid flat with its letter boxes. Both can be looked at without the marks.</summary>
internal static class PhotoSection
{
    /// <summary>Longest side of the photo inside the page, in pixels: letters of ten pixels in a phone photo of 4000 stay readable.</summary>
    private const int LongestSide = 2000;

    internal static void Write(Markup page, Examination examination, int index)
    {
        var photo = examination.Photo;
        page.Open("section").Element("h3", "The photo");
        Toggle(page, Invariant($"photo{index}"));
        page.Open("figure").OpenDrawing(photo.Colour.Width, photo.Colour.Height, "The photo with tube and letters marked", "picture")
            .Picture("jpeg", PictureEncoder.ToJpeg(photo.Colour, LongestSide), photo.Colour.Width, photo.Colour.Height, Invariant($"photo-picture{index}"))
            .Open("g", ("class", "marks"));
        if (examination.Tube is { } tube)
        {
            page.Segment(tube.Axis, "axis");
            foreach (var silhouette in tube.Silhouettes)
            {
                page.Segment(silhouette, "outline");
            }
        }

        foreach (var circle in RingOutline.Of(examination.Strip))
        {
            page.Outline(circle, "outline");
        }

        foreach (var letter in examination.Reading.Lines.SelectMany(line => line.Letters).Where(letter => !letter.IsSpace))
        {
            page.Patch(Drawing.Corners(letter.InPhoto), "letter", Title(letter));
        }

        page.Close("g").Close("svg").Element("figcaption", Caption(examination)).Close("figure").Close("section");
        Sizes(page, examination);
        Flat(page, examination, index);
    }

    private static void Sizes(Markup page, Examination examination)
    {
        if (examination.Sizes is null)
        {
            return;
        }

        page.Open("section").Element("h3", "Sizes");
        foreach (var sentence in SizeWords.Of(examination.Sizes))
        {
            page.Element("p", sentence);
        }

        page.Close("section");
    }

    private static void Flat(Markup page, Examination examination, int index)
    {
        var strip = examination.Strip;
        if (!strip.Unrolled)
        {
            return;
        }

        var ring = strip.Map as RingStripMap;
        page.Open("section").Element("h3", ring is null ? "The tube laid flat" : "The face of the ring laid flat");
        Toggle(page, Invariant($"strip{index}"));
        page.Open("figure").OpenDrawing(strip.Image.Width, strip.Image.Height, ring is null ? "The surface of the tube laid flat, letters boxed" : "The face of the ring laid flat, letters boxed", "picture")
            .Picture("jpeg", PictureEncoder.ToJpeg(strip.Image), strip.Image.Width, strip.Image.Height, Invariant($"strip-picture{index}"))
            .Open("g", ("class", "marks"));
        foreach (var letter in examination.Reading.Lines.SelectMany(line => line.Letters).Where(letter => !letter.IsSpace))
        {
            if (StripBoxes.Of(letter, strip) is { } box)
            {
                page.Patch(Drawing.Corners(box), "letter", Title(letter));
            }
        }

        page.Close("g").Close("svg")
            .Element("figcaption", ring is null ? "Along the tube from left to right, round the tube from top to bottom, one scale in both. Nothing was sharpened or filled in." : $"{RingSense.Sentence(examination.Reading, ring)} The ring was cut open where its lettering leaves the widest gap. Nothing was sharpened or filled in.")
            .Close("figure").Close("section");
    }

    private static void Toggle(Markup page, string id) => page
        .Empty("input", ("type", "checkbox"), ("id", "show-" + id), ("class", "show"), ("checked", "checked"))
        .Element("label", "show the marks", ("for", "show-" + id));

    private static string Title(Readings.Letter letter) => $"{letter.Character} {Percent(letter.Probability)}";

    private static string Caption(Examination examination)
    {
        var photo = examination.Photo;
        var facts = Invariant($"{photo.Colour.Width} x {photo.Colour.Height} pixels; {photo.Quality.BurntFraction * 100:0.0} % burnt out, {photo.Quality.BlackFraction * 100:0.0} % black.");
        return examination.Ring is not null
            ? facts + " Solid lines: the rim of the ring and how far in its face was laid flat."
            : examination.Tube is { } tube
            ? facts + Invariant($" Solid lines: outlines of the tube, {LetteredPart.DiameterOf(tube, examination.Reading).Pixels:0.0} pixels apart; dashed line: its axis.")
            : facts + " No tube was found; the photo was searched as it is.";
    }
}
