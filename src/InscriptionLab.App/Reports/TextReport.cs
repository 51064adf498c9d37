using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Text;
using InscriptionLab.Advice;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Records;
using InscriptionLab.Comparison;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using InscriptionLab.Gathering;
using InscriptionLab.Readings;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports;

/// <summary>An examination as plain text for the screen.</summary>
internal sealed class TextReport
{
    /// <summary>Columns of the screen that a sentence may take: 100, an ordinary terminal's width.</summary>
    private const int Columns = 100;

    private const string Indent = "             ";

    private readonly StringBuilder _text = new();

    /// <summary>Gives the report of one photo.</summary>
    internal static string Of(Examination examination)
    {
        var report = new TextReport();
        report.Photo(examination);
        report.Read(examination.Reading, examination.Advice.Measures.Burnt);
        report.Found(examination.Finding);
        report.Weighed(examination.Evidence);
        report.Limits(examination.Advice);
        foreach (var warning in examination.Warnings)
        {
            report.Entry("mind", warning);
        }

        report.Line(string.Empty);
        return report._text.ToString();
    }

    /// <summary>Gives the photos to ask a seller for; nothing where none is missing.</summary>
    internal static string OfRequests(ImmutableArray<string> requests)
    {
        if (requests.IsEmpty)
        {
            return string.Empty;
        }

        var report = new TextReport();
        report.Line("photos to ask the seller for");
        foreach (var request in requests)
        {
            report.Entry(string.Empty, request);
        }

        report.Line(string.Empty);
        return report._text.ToString();
    }

    /// <summary>Gives the report of several photos read together.</summary>
    internal static string Of(SetExamination set)
    {
        var report = new TextReport();
        var how = set.Kind == SetKind.Raking ? "one view under different lamps" : "the tube turned between the photos";
        report.Line($"{Counted(set.Members.Length, "photo", "photos")} read together ({how})");
        report.Entries("photos", [string.Join(", ", set.Members.Select(member => System.IO.Path.GetFileName(member.Photo.File)))]);
        report.Entries("because", set.Reasons);
        report.Read(set.Reading, []);
        report.Found(set.Finding);
        report.Weighed(set.Evidence);
        report.Line(string.Empty);
        return report._text.ToString();
    }

    private void Photo(Examination examination)
    {
        var photo = examination.Photo;
        Line(photo.File);
        Entry("photo", Invariant($"{photo.Colour.Width} x {photo.Colour.Height} pixels, {photo.Quality.BurntFraction * 100:0.0} % burnt out, {photo.Quality.BlackFraction * 100:0.0} % black"));
        if (examination is { Ring: { } ring, Strip.Map: RingStripMap map })
        {
            Entry("ring", Invariant($"round ({Point(ring.Outer.Centre)}), {2 * ring.Outer.SemiMajor.Pixels:0.0} by {2 * ring.Outer.SemiMinor.Pixels:0.0} pixels. {RingSense.Sentence(examination.Reading, map)}"));
            return;
        }

        Entry("tube", examination.Tube is { } tube ? Place(tube, examination.Reading) : "none found");
        foreach (var sentence in SizeWords.Of(examination.Sizes))
        {
            Entry("sizes", sentence);
        }
    }

    private static string Place(Tube tube, Reading reading)
    {
        var where = LetteredPart.MiddleOf(reading) is null ? "in the middle" : "at the lettering";
        return Invariant($"axis from ({Point(tube.Axis.Start)}) to ({Point(tube.Axis.End)}), {LetteredPart.DiameterOf(tube, reading).Pixels:0.0} pixels across {where}");
    }

    private void Read(Reading reading, ImmutableArray<BurntPlace> burnt)
    {
        Entry("lettering", reading.Lines.Length == 0 ? "none read" : Counted(reading.Lines.Length, "line", "lines"));
        for (var i = 0; i < reading.Lines.Length; i++)
        {
            Line(string.Empty);
            Line(Invariant($"  line {i + 1,-5} {reading.Lines[i].Text}"));
            foreach (var (name, sentence) in LineNotes.Of(reading.Lines[i], i, burnt))
            {
                Entry(name, sentence);
            }

            foreach (var letter in reading.Lines[i].Letters.Where(letter => !letter.IsSpace))
            {
                Line(Invariant($"{Indent}{letter.Character}  {Percent(letter.Probability),5}  {Others(letter)}").TrimEnd());
            }
        }

        if (reading.Style is [var style, ..])
        {
            Line(string.Empty);
            Entry("style", $"{style.Style} ({Percent(style.Probability)})");
        }
    }

    private static string Others(Letter letter) => letter.Alternatives.Length == 0
        ? string.Empty
        : "or " + string.Join(", ", letter.Alternatives.Select(other => $"{(other.Character.Length == 0 ? "nothing" : other.Character)} {Percent(other.Probability)}"));

    private void Found(Finding finding)
    {
        foreach (var nearest in finding.Nearest)
        {
            Line(string.Empty);
            Near(nearest);
        }

        Line(string.Empty);
        Entry("finding", Words.For(finding.Outcome));
        Entries("because", finding.Reasons);
        Entries("open", finding.CannotDecide);
        Entries("next photo", finding.Retake);
    }

    private void Weighed(EvidenceReport evidence)
    {
        if (evidence.IsEmpty)
        {
            return;
        }

        Line(string.Empty);
        if (!evidence.Items.IsEmpty)
        {
            Entries("evidence", [$"weighed under three explanations. {string.Join("; ", EvidenceWords.Propositions)}."]);
            foreach (var item in evidence.Items)
            {
                Entry(string.Empty, item.Statement);
                Entry(string.Empty, $"{EvidenceWords.ValuesOf(item.Ratios)} ({item.Weight.Basis}: {item.Weight.Source}). Would change with: {item.Weight.WouldChange}.");
            }
        }

        Entries(evidence.Items.IsEmpty ? "years" : "together", evidence.Sentences.Skip(evidence.Items.Length));
        Entry("ratios", string.Join("; ", EvidenceSentences.Scale) + ".");
    }

    private void Limits(PhotoAdvice advice)
    {
        if (LightWords.Of(advice.Measures) is { } light)
        {
            Entry("light", light);
        }

        if (OutlineWords.Of(advice.Measures) is { } outlines)
        {
            Entry("outlines", outlines);
        }

        var name = "limited by";
        if (advice.Worst is null)
        {
            Entry(name, "nothing that was measured");
            name = "missing";
        }

        foreach (var limit in advice.Limits)
        {
            var figures = AdviceFigures.Of(limit);
            Entry(name, figures.Length == 0 ? limit.Sentence : $"{limit.Sentence} ({figures})");
            name = string.Empty;
            foreach (var step in limit.Steps)
            {
                Entry(string.Empty, "- " + step);
            }
        }
    }

    private void Near(NearestForm nearest)
    {
        var form = nearest.Form;
        var differ = nearest.Differences.Length == 0 ? "no letter differs" : Counted(nearest.Differences.Length, "letter differs", "letters differ");
        Entry("near", $"{form.Form} ({form.Maker}, {Words.For(form.Status)}): {differ}");
        if (nearest.Differences.Length == 0)
        {
            return;
        }

        var places = FormBesideReading.Of(nearest);
        Line($"{Indent}form  {string.Concat(places.Select(place => place.Attested.Length == 0 ? "-" : place.Attested))}");
        Line($"{Indent}read  {string.Concat(places.Select(place => place.Read.Length == 0 ? "-" : place.Read))}");
        Line($"{Indent}      {string.Concat(places.Select(place => place.Difference is null ? " " : "^"))}".TrimEnd());
        foreach (var difference in nearest.Differences)
        {
            Line($"{Indent}      {DifferenceWords.For(difference)}");
        }
    }

    private void Entries(string name, IEnumerable<string> sentences)
    {
        foreach (var sentence in sentences)
        {
            Entry(name, sentence);
            name = string.Empty;
        }
    }

    private void Entry(string name, string sentence)
    {
        var start = "  " + name.PadRight(Indent.Length - 2);
        foreach (var line in Wrapped(sentence))
        {
            Line(start + line);
            start = Indent;
        }
    }

    private static IEnumerable<string> Wrapped(string sentence)
    {
        var line = new StringBuilder();
        foreach (var word in sentence.Split(' '))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > Columns - Indent.Length)
            {
                yield return line.ToString();
                line.Clear();
            }

            line.Append(line.Length == 0 ? string.Empty : " ").Append(word);
        }

        yield return line.ToString();
    }

    private void Line(string line) => _text.Append(line).Append('\n');
}
