using System.Collections.Immutable;
using System.IO;
using System.Linq;
using InscriptionLab.App.Measuring;
using InscriptionLab.Cells;
using InscriptionLab.Vision.Pictures;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports.Html;

/// <summary>A measurement as one page that needs nothing beside itself.</summary>
internal static class MeasurementPage
{
    private const int LongestSide = 2000;

    internal static string Of(ImmutableArray<PhotoMeasurement> measured, Provenance provenance)
    {
        var page = new Markup();
        var title = string.Join(", ", measured.Select(one => Path.GetFileName(one.Photo.File)));
        PageFrame.Open(page, title);
        for (var i = 0; i < measured.Length; i++)
        {
            One(page, measured[i], i);
        }

        CautionSection.Write(page);
        ProvenanceSection.Write(page, measured, provenance);
        return PageFrame.Close(page);
    }

    private static void One(Markup page, PhotoMeasurement measured, int index)
    {
        page.Open("article").Element("h2", Path.GetFileName(measured.Photo.File), ("class", "photo-name"));
        if (measured.Measurement is { } cell)
        {
            Diameters(page, cell);
        }

        Picture(page, measured, index);
        if (measured.Measurement is { } budgeted)
        {
            Budgets(page, budgeted);
        }

        if (measured.Warnings.Length > 0)
        {
            page.Open("section").Element("h3", "To bear in mind").Open("ul");
            foreach (var warning in measured.Warnings)
            {
                page.Element("li", warning);
            }

            page.Close("ul").Close("section");
        }

        page.Close("article");
    }

    private static void Diameters(Markup page, CellMeasurement cell)
    {
        page.Open("section").Element("h3", "Diameters").Open("div", ("class", "scroll")).Open("table", ("class", "diameters"))
            .Open("tr").Element("th", "circle").Element("th", "diameter").Element("th", "expanded uncertainty").Element("th", "inches").Element("th", "Paris lignes").Close("tr");
        foreach (var circle in cell.Circles)
        {
            page.Open("tr").Element("td", MeasurementText.NameOf(circle.Role))
                .Element("td", Invariant($"{circle.Diameter.Value.Millimetres:0.000} mm"))
                .Element("td", Invariant($"\u00B1 {circle.Diameter.ExpandedUncertainty.Millimetres:0.000} mm (k = {circle.Diameter.CoverageFactor:0.##})"))
                .Element("td", Invariant($"{circle.Diameter.Value.Inches:0.000}"))
                .Element("td", Invariant($"{circle.Diameter.Value.ParisLignes:0.00}"))
                .Close("tr");
        }

        page.Close("table").Close("div");
        foreach (var circle in cell.Circles)
        {
            page.Element("p", $"{MeasurementText.NameOf(circle.Role)}: {circle.ToStatement()}.", ("class", "note"));
        }

        page.Close("section");
    }

    private static void Picture(Markup page, PhotoMeasurement measured, int index)
    {
        var photo = measured.Photo;
        var id = Invariant($"cell{index}");
        page.Open("section").Element("h3", "The photo")
            .Empty("input", ("type", "checkbox"), ("id", "show-" + id), ("class", "show"), ("checked", "checked"))
            .Element("label", "show the marks", ("for", "show-" + id))
            .Open("figure").OpenDrawing(photo.Colour.Width, photo.Colour.Height, "The photo with circles and scale marked", "picture")
            .Picture("jpeg", PictureEncoder.ToJpeg(photo.Colour, LongestSide), photo.Colour.Width, photo.Colour.Height, id)
            .Open("g", ("class", "marks"));
        if (measured.Measurement is { } cell)
        {
            foreach (var circle in cell.Circles)
            {
                Ellipse(page, circle);
            }

            foreach (var point in cell.Scale.Points)
            {
                page.Empty("circle", ("class", "outline"), ("cx", Invariant($"{point.X:0.##}")), ("cy", Invariant($"{point.Y:0.##}")), ("r", "3"));
            }
        }

        page.Close("g").Close("svg").Element("figcaption", measured.Measurement is { } found ? "Scale: " + MeasurementText.ScaleWords(found.Scale) + "." : "Nothing was measured.").Close("figure").Close("section");
    }

    private static void Ellipse(Markup page, CellCircle circle)
    {
        var (centre, ellipse) = (circle.Ellipse.Centre, circle.Ellipse);
        page.Open(
            "ellipse",
            ("class", "letter"),
            ("cx", Invariant($"{centre.X:0.##}")),
            ("cy", Invariant($"{centre.Y:0.##}")),
            ("rx", Invariant($"{ellipse.SemiMajor.Pixels:0.##}")),
            ("ry", Invariant($"{ellipse.SemiMinor.Pixels:0.##}")),
            ("transform", Invariant($"rotate({ellipse.Rotation.Degrees:0.##} {centre.X:0.##} {centre.Y:0.##})")))
            .Element("title", MeasurementText.NameOf(circle.Role)).Close("ellipse");
    }

    private static void Budgets(Markup page, CellMeasurement cell)
    {
        page.Open("section").Element("h3", "Where the uncertainty comes from");
        foreach (var circle in cell.Circles)
        {
            page.Open("details").Element("summary", Invariant($"{MeasurementText.NameOf(circle.Role)}: standard uncertainty {circle.Budget.CombinedStandardUncertainty:0.0000} mm"))
                .Open("div", ("class", "scroll")).Open("table", ("class", "diameters"))
                .Open("tr").Element("th", "source").Element("th", "standard uncertainty").Element("th", "share of the diameter's").Element("th", "basis").Close("tr");
            foreach (var row in circle.Budget.Rows.OrderByDescending(row => row.Contribution))
            {
                page.Open("tr").Element("td", row.Source)
                    .Element("td", Invariant($"{row.StandardUncertainty:0.#####} {row.Unit}"))
                    .Element("td", Invariant($"{row.Contribution:0.0000} mm"))
                    .Element("td", row.Basis).Close("tr");
            }

            page.Close("table").Close("div").Close("details");
        }

        page.Close("section");
    }
}
