using System;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Threading;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Reports;
using InscriptionLab.App.Reports.Papers;
using InscriptionLab.Cataloguing;
using InscriptionLab.Exchange;
using InscriptionLab.Files;
using InscriptionLab.Outcomes;

namespace InscriptionLab.App.Cataloguing;

/// <summary>Writes reports of a catalogue's objects.</summary>
/// <param name="composition">The stages.</param>
/// <param name="output">The screen.</param>
internal sealed class PaperReport(Composition composition, TextWriter output)
{
    /// <summary>Most objects of one report: beyond, it is neither read nor opened any more.</summary>
    private const int MostObjects = 200;

    /// <summary>Writes one report.</summary>
    /// <param name="address">The catalogue.</param>
    /// <param name="keys">Objects; none for all.</param>
    /// <param name="file">Where it goes; its ending says in which form.</param>
    /// <param name="isShort">True for one page an object.</param>
    /// <param name="reference">Reference list; null for the demonstration list.</param>
    /// <param name="cancel">Stops between two objects.</param>
    internal void Write(string address, ImmutableArray<string> keys, string file, bool isShort, string? reference, CancellationToken cancel)
    {
        var form = Path.GetExtension(file).ToLowerInvariant();
        if (form is not (".pdf" or ".html"))
        {
            throw new InscriptionLabException($"{file}: a report is written as .pdf or .html; name a file with one of these endings.");
        }

        var catalogue = Catalogue.OpenExisting(address, composition.Clock);
        var papers = new CataloguePapers(composition, ReferenceSource.Load(reference), catalogue);
        var found = keys.IsEmpty ? ExchangeSource.Objects(catalogue, null) : keys.SelectMany(key => ExchangeSource.Objects(catalogue, key));
        ImmutableArray<PaperObject> objects = [.. found.Take(MostObjects + 1).Select(shown => Of(papers, shown, cancel))];
        if (objects.Length is 0 or > MostObjects)
        {
            throw new InscriptionLabException(objects.Length == 0 ? "The catalogue holds no object to report on." : $"A report holds {MostObjects} objects at most; name the objects that it shall hold.");
        }

        var title = objects.Length == 1 ? objects[0].ShownTitle : Figures.Invariant($"{objects.Length} objects of {catalogue.Address.Name}");
        var (made, program) = (composition.Clock.GetLocalNow(), ProgramFacts.NameAndVersion);
        var paper = isShort ? ShortForm.Of(title, objects, made, program) : FullReport.Of(title, objects, made, program);
        try
        {
            WholeFile.Write(file, form == ".pdf" ? PdfPaper.Of(paper) : System.Text.Encoding.UTF8.GetBytes(HtmlPaper.Of(paper)));
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new InscriptionLabException($"{file}: the report cannot be written there; name another file with --out.", problem);
        }

        output.WriteLine($"{Figures.Counted(objects.Length, "object", "objects")} written to {file}");
    }

    private static PaperObject Of(CataloguePapers papers, ExchangeObject shown, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        return papers.Of(shown, cancel);
    }
}
