using System.Collections.Immutable;
using System.IO;
using System.Linq;
using InscriptionLab.App.Examining;
using InscriptionLab.Reliefs;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports.Html;

/// <summary>An examination as one page that needs nothing beside itself: pictures and style are inside. There is no script, but for the one that moves a lamp over a relief where the page shows one; the page says so to the browser, which runs no other.</summary>
internal static class ExaminationPage
{
    /// <summary>Gives the page.</summary>
    /// <param name="examinations">The photos, in the order given.</param>
    /// <param name="sets">What they gave together, one set of photos each; empty where none were read together.</param>
    /// <param name="provenance">Where it all comes from.</param>
    internal static string Of(ImmutableArray<Examination> examinations, ImmutableArray<SetExamination> sets, Provenance provenance)
    {
        var page = new Markup();
        var title = examinations.Length == 1
            ? Path.GetFileName(examinations[0].Photo.File)
            : $"{Path.GetFileName(examinations[0].Photo.File)} and {Counted(examinations.Length - 1, "more photo", "more photos")}";
        var script = sets.Any(set => set.Relief is { Kind: ReliefKind.Normals }) ? ReliefSection.Script : null;
        PageFrame.Open(page, title, script: script);
        for (var i = 0; i < sets.Length; i++)
        {
            TogetherSection.Write(page, sets[i], i);
        }

        for (var i = 0; i < examinations.Length; i++)
        {
            One(page, examinations[i], i, alone: examinations.Length == 1);
        }

        AdviceSection.WriteRequests(page, Requests.Of(examinations, sets));
        CautionSection.Write(page);
        ProvenanceSection.Write(page, examinations, provenance);
        return PageFrame.Close(page, script);
    }

    private static void One(Markup page, Examination examination, int index, bool alone)
    {
        page.Open("article");
        if (!alone)
        {
            page.Element("h2", Path.GetFileName(examination.Photo.File), ("class", "photo-name"));
        }

        FindingSection.Write(page, examination.Finding);
        NearestSection.Write(page, examination.Finding, examination.Reading, Invariant($"p{index}"));
        EvidenceSection.Write(page, examination.Evidence);
        AdviceSection.Write(page, examination.Advice);
        PhotoSection.Write(page, examination, index);
        LetteringSection.Write(page, examination.Reading, Invariant($"p{index}"), examination.Advice.Measures.Burnt);
        if (examination.Warnings.Length > 0)
        {
            page.Open("section").Element("h3", "To bear in mind").Open("ul");
            foreach (var warning in examination.Warnings)
            {
                page.Element("li", warning);
            }

            page.Close("ul").Close("section");
        }

        page.Close("article");
    }
}
