using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using InscriptionLab.App.Reports;
using InscriptionLab.Cataloguing;
using InscriptionLab.Files;
using InscriptionLab.Outcomes;

namespace InscriptionLab.App.Cataloguing;

/// <summary>The catalogue's answers as plain text: what the subcommands do once their words are understood.</summary>
/// <param name="address">File or connection string.</param>
/// <param name="output">The screen.</param>
/// <param name="clock">The clock.</param>
/// <param name="mayBeNew">True where a catalogue that is not there yet is made.</param>
internal sealed class CatalogueReport(string address, TextWriter output, TimeProvider clock, bool mayBeNew = false)
{
    /// <summary>How many steps are listed.</summary>
    private const int StepsShown = 50;

    private readonly Catalogue _catalogue = Opened(address, output, clock, mayBeNew);

    /// <summary>Lists what a query finds.</summary>
    internal void Find(SearchQuery query)
    {
        var hits = _catalogue.Search.Find(query);
        foreach (var hit in hits)
        {
            Line(hit, query.Near is null ? string.Empty : "  " + Figures.Counted(hit.Edits, "letter differs", "letters differ"));
        }

        output.WriteLine(hits.Length == query.Most ? $"the first {hits.Length} (more with --most)" : $"{hits.Length} found");
    }

    /// <summary>Lists the marks that look most like a line of an examination.</summary>
    internal void Like(long examination, int line, int most)
    {
        var source = _catalogue.Likeness;
        var number = source.LineOf(examination, line - 1)
            ?? throw new InscriptionLabException($"Examination {examination} has no line {line} with a picture; see ./lab catalogue find for the numbers.");
        var index = source.Load();
        foreach (var like in index.Nearest([.. source.Of(number)!], most + 1).Where(like => like.Id != number).Take(most))
        {
            if (_catalogue.Search.OfLine(like.Id) is { } hit)
            {
                Line(hit, string.Create(CultureInfo.InvariantCulture, $"  likeness {like.Likeness:0.00}"));
            }
        }

        output.WriteLine($"{index.Count} marks were compared by how their strokes run; likeness is a hint where to look, not a proof of one hand");
    }

    /// <summary>Shows one examination's record.</summary>
    internal void Show(long examination) => output.WriteLine(_catalogue.Search.RecordOf(examination) ?? throw new InscriptionLabException($"The catalogue has no examination {examination}; ./lab catalogue find lists what there is."));

    /// <summary>Lays a correction over a line.</summary>
    internal void Correct(long examination, int line, string becomes, string by, string reason)
    {
        _catalogue.Desk.Correct(examination, line - 1, becomes, by, reason);
        output.WriteLine("kept beside the machine's reading, which stays as it is");
    }

    /// <summary>Describes an object.</summary>
    internal void Describe(string key, string? title, string? note, string? offeredAs, string by)
    {
        _catalogue.Desk.Describe(key, title, note, offeredAs, by);
        output.WriteLine("kept");
    }

    /// <summary>Moves an object into the trash or out of it.</summary>
    internal void Trash(string key, bool trashed, string by)
    {
        _catalogue.Desk.Trash(key, trashed, by);
        output.WriteLine(trashed ? $"{key} is in the trash; ./lab catalogue restore {key} takes it out again" : $"{key} is back");
    }

    /// <summary>Hangs a photo on another object.</summary>
    internal void Move(string sha256, string key, string by)
    {
        _catalogue.Desk.MovePhoto(sha256, key, by);
        output.WriteLine("kept");
    }

    /// <summary>Undoes the latest step.</summary>
    internal void Undo() => output.WriteLine(_catalogue.Desk.Undo() is { } undone ? $"undone: {undone}" : "there is nothing to undo");

    /// <summary>Lists the latest steps.</summary>
    internal void Steps()
    {
        foreach (var (at, by, sentence, undone) in _catalogue.Desk.Steps(StepsShown))
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{at:yyyy-MM-dd HH:mm}  {by,-12}  {(undone ? "(undone) " : string.Empty)}{sentence}"));
        }
    }

    /// <summary>Checks the catalogue.</summary>
    /// <returns>True where it is sound.</returns>
    internal bool Check()
    {
        IReadOnlyList<string> faults = _catalogue.Health.Check();
        foreach (var fault in faults)
        {
            output.WriteLine(fault);
        }

        output.WriteLine(faults.Count == 0 ? "the catalogue is sound" : Figures.Counted(faults.Count, "fault", "faults"));
        return faults.Count == 0;
    }

    /// <summary>Writes the whole catalogue into one file.</summary>
    internal void Export(string file)
    {
        var rows = 0L;
        WholeFile.Write(file, writer => rows = _catalogue.Archive.Export(writer));
        output.WriteLine($"{rows} rows written to {file}");
    }

    /// <summary>Reads a whole catalogue from a file.</summary>
    internal void Import(string file)
    {
        if (!File.Exists(file))
        {
            throw new InscriptionLabException($"{file}: there is no such file; name one that ./lab catalogue export wrote.");
        }

        using var reader = new StreamReader(file);
        output.WriteLine($"{_catalogue.Archive.Import(reader)} rows read from {file}");
    }

    private void Line(SearchHit hit, string more) =>
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{hit.Examination,6}  {hit.MadeAt:yyyy-MM-dd}  {hit.Outcome,-12}  {hit.Text}  [{hit.File}; object {hit.ObjectKey}{(hit.Nearest.Length > 0 ? "; nearest " + hit.Nearest : string.Empty)}]{more}"));

    private static Catalogue Opened(string address, TextWriter output, TimeProvider clock, bool mayBeNew)
    {
        var catalogue = mayBeNew ? Catalogue.Open(address, clock) : Catalogue.OpenExisting(address, clock);
        if (catalogue.CopyMade is { } copy)
        {
            output.WriteLine($"The catalogue was brought to the newest form; as it was before it lies in {copy}.");
        }

        return catalogue;
    }
}
