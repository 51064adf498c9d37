using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Measuring;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports.Html;

/// <summary>What this page was made from and with.</summary>
internal static class ProvenanceSection
{
    internal static void Write(Markup page, ImmutableArray<Examination> examinations, Provenance provenance)
    {
        page.Open("section", ("class", "provenance")).Element("h3", "Where this comes from").Open("dl");
        foreach (var examination in examinations)
        {
            Row(page, "photo", $"{examination.Photo.File}, SHA-256 {examination.Photo.Sha256}");
            Row(page, "time", string.Join(", ", examination.Times.Select(time => $"{time.Stage} {Seconds(time.Elapsed)}")));
        }

        Row(page, "reader", string.Join("; ", examinations.Select(examination => examination.Reading.Reader).Distinct(System.StringComparer.Ordinal)));
        Row(page, "list", provenance.ListSha256.Length == 0 ? provenance.List : $"{provenance.List}, SHA-256 {provenance.ListSha256}");
        Finish(page, provenance);
    }

    internal static void Write(Markup page, ImmutableArray<PhotoMeasurement> measured, Provenance provenance)
    {
        page.Open("section", ("class", "provenance")).Element("h3", "Where this comes from").Open("dl");
        foreach (var one in measured)
        {
            Row(page, "photo", $"{one.Photo.File}, SHA-256 {one.Photo.Sha256}");
        }

        Finish(page, provenance);
    }

    private static void Finish(Markup page, Provenance provenance)
    {
        Row(page, "program", provenance.Program);
        foreach (var model in provenance.Models)
        {
            Row(page, "model", $"{model.Name}, SHA-256 {model.Sha256}");
        }

        if (provenance.Asked.Length > 0)
        {
            Row(page, "options", string.Join(" ", provenance.Asked));
        }

        Row(page, "made", Invariant($"{provenance.Made:yyyy-MM-dd HH:mm:ss zzz}"));
        page.Close("dl").Close("section");
    }

    private static void Row(Markup page, string name, string value) => page.Element("dt", name).Element("dd", value);
}
