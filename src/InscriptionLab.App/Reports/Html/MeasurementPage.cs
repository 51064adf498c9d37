using System.IO;
using System.Linq;
using InscriptionLab.App.Measuring;
using InscriptionLab.Cells;
using InscriptionLab.Measures;
using InscriptionLab.Optics;
using InscriptionLab.Vision.Pictures;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports.Html;

/// <summary>A measurement as one page that needs nothing beside itself.</summary>
internal static class MeasurementPage
{
    private const int LongestSide = 2000;

    /// <summary>Factor by which the drawn line of edge points leaves its circle: a tenth of a pixel shows as two.</summary>
    private const double Magnification = 20;

    internal static string Of(MeasuredPhotos all, Provenance provenance)
    {
        var (page, measured) = (new Markup(), all.Photos);
        var title = string.Join(", ", measured.Select(one => Path.GetFileName(one.Photo.File)));
        PageFrame.Open(page, title);
        Together(page, all);
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

        Optics(page, measured.Optics);

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

        if (!cell.Others.IsEmpty)
        {
            page.Element("p", Invariant($"Also seen about the same axis and given no role (dashed on the photo): {string.Join(", ", cell.Others.Select(circle => Invariant($"{circle.Diameter.Millimetres:0.0} mm")))}. A bevel, the far end of a bore or a reflection may look like an aperture: look whether the circles named above are the right ones."), ("class", "note"));
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
                Ellipse(page, circle.Ellipse, "letter", MeasurementText.NameOf(circle.Role));
                if (!circle.Edge.IsEmpty)
                {
                    page.Empty("polygon", ("class", "residuals"), ("points", string.Join(' ', EdgeResiduals.Magnified(circle, Magnification).Select(point => Invariant($"{point.X:0.#},{point.Y:0.#}")))));
                }
            }

            foreach (var circle in cell.Others)
            {
                Ellipse(page, circle.Ellipse, "other", Invariant($"about {circle.Diameter.Millimetres:0.0} mm, without a role"));
            }

            foreach (var point in cell.Scale.Points)
            {
                page.Empty("circle", ("class", "outline"), ("cx", Invariant($"{point.X:0.##}")), ("cy", Invariant($"{point.Y:0.##}")), ("r", "3"));
            }
        }

        page.Close("g").Close("svg").Element("figcaption", measured.Measurement is { } found ? Invariant($"Scale: {MeasurementText.ScaleWords(found.Scale)}. The yellow line joins the edge points, their distance from the circle magnified {Magnification:0} times: {string.Join("; ", found.Circles.Where(circle => !circle.Edge.IsEmpty).Select(circle => Invariant($"{MeasurementText.NameOf(circle.Role)} {EdgeResiduals.RootMeanSquare(circle):0.00} pixels (root mean square)")))}.") : "Nothing was measured.").Close("figure").Close("section");
    }

    private static void Ellipse(Markup page, PixelEllipse ellipse, string kind, string title)
    {
        var centre = ellipse.Centre;
        page.Open(
            "ellipse",
            ("class", kind),
            ("cx", Invariant($"{centre.X:0.##}")),
            ("cy", Invariant($"{centre.Y:0.##}")),
            ("rx", Invariant($"{ellipse.SemiMajor.Pixels:0.##}")),
            ("ry", Invariant($"{ellipse.SemiMinor.Pixels:0.##}")),
            ("transform", Invariant($"rotate({ellipse.Rotation.Degrees:0.##} {centre.X:0.##} {centre.Y:0.##})")))
            .Element("title", title).Close("ellipse");
    }

    private static void Budgets(Markup page, CellMeasurement cell)
    {
        page.Open("section").Element("h3", "Where the uncertainty comes from");
        foreach (var circle in cell.Circles)
        {
            BudgetSection.Write(page, MeasurementText.NameOf(circle.Role), circle.Budget, circle.Diameter.CoverageFactor);
        }

        page.Close("section");
    }

    private static void Together(Markup page, MeasuredPhotos measured)
    {
        if (measured.Together.IsEmpty)
        {
            return;
        }

        page.Open("article").Element("h2", "The photos together", ("class", "photo-name")).Open("section");
        foreach (var circle in measured.Together)
        {
            page.Element("p", $"{MeasurementText.NameOf(circle.Role)}: {circle.ToStatement()}.")
                .Element("p", $"Mean of {string.Join(", ", circle.Readings.Select(reading => Invariant($"{reading.Millimetres:0.000}")))} mm.", ("class", "note"));
            if (circle.Disagreement is { } disagreement)
            {
                page.Element("p", disagreement);
            }

            BudgetSection.Write(page, MeasurementText.NameOf(circle.Role), circle.Budget, circle.Diameter.CoverageFactor);
        }

        page.Close("section");
        Optics(page, measured.Optics);
        page.Close("article");
    }

    private static void Optics(Markup page, OpticsAccount? account)
    {
        if (account is null)
        {
            return;
        }

        page.Open("section").Element("h3", "What the glass could do").Open("div", ("class", "scroll")).Open("table", ("class", "diameters"));
        foreach (var figure in account.Figures)
        {
            page.Open("tr").Element("td", figure.Name).Element("td", Invariant($"{figure.Value:0.###}{(figure.Unit == "1" ? string.Empty : " " + figure.Unit)}")).Element("td", figure.Basis).Close("tr");
        }

        page.Close("table").Close("div");
        foreach (var sentence in (account.DayNight?.Reasons ?? []).Concat(account.Notes))
        {
            page.Element("p", sentence, ("class", "note"));
        }

        page.Close("section");
    }
}
