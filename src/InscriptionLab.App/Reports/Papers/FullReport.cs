using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.App.Records;
using InscriptionLab.Findings;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>Writes the whole report of one object or of a lot.</summary>
internal static class FullReport
{
    /// <summary>Below this probability a letter's alternatives are written out.</summary>
    private const double Legible = 0.9;

    /// <summary>Forms laid beside the lettering; the others are far away.</summary>
    private const int MostForms = 3;

    internal static Paper Of(string title, ImmutableArray<PaperObject> objects, DateTimeOffset made, string program)
    {
        var parts = new List<ImmutableArray<Block>>();
        parts.AddRange(objects.Select(One));
        parts.Add([.. Closing()]);
        return new Paper(title, made, program, [.. parts]);
    }

    private static ImmutableArray<Block> One(PaperObject shown)
    {
        var blocks = new List<Block> { new Block.Heading(shown.ShownTitle, 1) };
        var facts = new List<(string, string)>();
        if (shown.ShownTitle != shown.Key)
        {
            facts.Add(("object", shown.Key));
        }

        if (shown.OfferedAs is { } offered)
        {
            facts.Add(("offered as", offered));
        }

        if (shown.Note is { } note)
        {
            facts.Add(("note", note));
        }

        facts.Add(("photos", Invariant($"{shown.Photos.Length}")));
        blocks.Add(new Block.Facts([.. facts]));
        blocks.AddRange(shown.Sets.SelectMany(One));
        foreach (var photo in shown.Photos)
        {
            blocks.AddRange(One(photo));
        }

        if (!shown.Construction.IsEmpty)
        {
            blocks.Add(new Block.Heading("Construction, as seen on the piece", 2));
            blocks.Add(new Block.Facts(shown.Construction));
        }

        blocks.AddRange(AdviceBlocks.OfRequests(shown.Requests));
        return [.. blocks];
    }

    private static IEnumerable<Block> One(PaperSet set) =>
    [
        new Block.Heading(set.Title, 2),
        .. Outcome(set.Finding),
        .. set.Pictures.Select(picture => new Block.Figure(picture)),
        .. Lettering(set.Lines),
        .. Forms(set.Finding, set.Lines),
        .. EvidenceBlocks.Of(set.Evidence),
        .. Part("Read by hand", set.Hands),
        .. Part("Why these photos belong together", set.Reasons.Insert(0, string.Join(", ", set.Photos) + ".")),
    ];

    private static IEnumerable<Block> Outcome(PaperFinding? finding) => finding is null ? [] :
    [
        new Block.Outcome(Html.FindingSection.SignOf(finding.Outcome), Html.FindingSection.HeadingOf(finding.Outcome)),
        .. Part("Reasons", finding.Reasons),
        .. Part("What the photo cannot decide", finding.CannotDecide),
        .. Part("How to photograph it again", finding.Retake),
    ];

    private static IEnumerable<Block> One(PaperPhoto photo)
    {
        yield return new Block.Heading(photo.Name, 2);
        foreach (var block in Outcome(photo.Finding))
        {
            yield return block;
        }

        foreach (var picture in photo.Pictures)
        {
            yield return new Block.Figure(picture);
        }

        foreach (var block in Ring(photo.Ring).Concat(Lettering(photo.Lines)).Concat(Forms(photo.Finding, photo.Lines)).Concat(EvidenceBlocks.Of(photo.Evidence)).Concat(Measured(photo)))
        {
            yield return block;
        }

        foreach (var block in Part("Read or drawn by hand", photo.Hands).Concat(AdviceBlocks.Of(photo.Advice)).Concat(Part("To bear in mind", photo.Warnings)))
        {
            yield return block;
        }

        yield return new Block.Heading("Where this comes from", 3);
        yield return new Block.Facts([("file", photo.Name), ("SHA-256", photo.Sha256), ("size", Invariant($"{photo.Width} x {photo.Height} pixels")), .. photo.Versions]);
    }

    private static IEnumerable<Block> Part(string heading, ImmutableArray<string> sentences) =>
        sentences.IsEmpty ? [] : [new Block.Heading(heading, 3), new Block.Sentences(sentences)];

    private static IEnumerable<Block> Ring(RingRecord? ring) => ring is null ? [] :
    [
        new Block.Heading("The face of the ring", 3),
        new Block.Facts(
        [
            ("rim", Ellipse(ring.Rim)),
            ("laid flat inward to", Ellipse(ring.Opening)),
            ("tops of the letters", ring.Tops switch { "none" => "nothing was read on the ring", "both" => "outward and inward", var side => side }),
            ("marked", ring.ByHand ? "by hand" : "by the program"),
        ]),
    ];

    private static string Ellipse(EllipseRecord ellipse) =>
        Invariant($"an ellipse of {2 * ellipse.SemiAxes[0]:0.0} x {2 * ellipse.SemiAxes[1]:0.0} pixels about {ellipse.Centre[0]:0.0}, {ellipse.Centre[1]:0.0}");

    private static IEnumerable<Block> Lettering(ImmutableArray<PaperLine> lines)
    {
        if (lines.IsEmpty)
        {
            yield break;
        }

        yield return new Block.Heading("Lettering, after the Leiden conventions", 3);
        foreach (var line in lines)
        {
            yield return new Block.Lettering(line.Leiden);
            if (line.Correction is { } correction)
            {
                yield return new Block.Aside(correction);
            }

            yield return new Block.Letters(
                [.. line.Letters.Select(letter => new LetterCell(letter.Picture, letter.Character, string.Empty, letter.By is null ? Sure(letter) : "by hand", false))],
                false);
            ImmutableArray<string> unsure = [.. line.Letters
                .Where(letter => letter.By is null && letter.Others.Length > 0 && letter.Probability < Legible)
                .Select(letter => $"{letter.Character} ({Figures.Percent(Measures.Probability.From(letter.Probability))}) or {letter.Others}")];
            if (unsure.Length > 0)
            {
                yield return new Block.Aside("Less sure: " + string.Join("; ", unsure) + ".");
            }
        }

        yield return new Block.Aside("A dot below: not surely read. [.]: cut but not to be seen. The figure below a letter says how sure the reading is; nothing was completed or corrected after a list.");
    }

    private static IEnumerable<Block> Forms(PaperFinding? finding, ImmutableArray<PaperLine> lines)
    {
        if (finding is not { Forms.IsEmpty: false })
        {
            yield break;
        }

        yield return new Block.Heading("Beside the nearest forms of the list", 3);
        foreach (var form in finding.Forms.Take(MostForms))
        {
            yield return new Block.Lettering(form.Form);
            yield return new Block.Aside(form.Facts);
            if (!form.Places.IsEmpty)
            {
                yield return new Block.Letters([.. form.Places.Select(place => Cell(place, lines))], true);
            }

            yield return form.Differences.IsEmpty ? new Block.Aside("No letter differs.") : new Block.Sentences(form.Differences);
            if (form.Ratio is { } ratio)
            {
                yield return new Block.Aside(ratio);
            }
        }

        yield return new Block.Aside("Upper row: the letters as photographed; middle: as read; lower: the form's letters in a present-day typeface, which shows the spelling, not the hand.");
    }

    private static LetterCell Cell(AlignedPlace place, ImmutableArray<PaperLine> lines)
    {
        var at = place.Difference ?? place.Agreement;
        var letter = at is not null && place.Read.Length > 0 && at.LineIndex < lines.Length && at.LetterIndex < lines[at.LineIndex].Letters.Length ? lines[at.LineIndex].Letters[at.LetterIndex] : null;
        return new LetterCell(letter?.Picture, place.Read, place.Attested, string.Empty, place.Difference is not null);
    }

    private static IEnumerable<Block> Measured(PaperPhoto photo)
    {
        foreach (var block in Part("Tube and lettering in millimetres", photo.Sizes))
        {
            yield return block;
        }

        if (photo.Measures.IsEmpty)
        {
            yield break;
        }

        yield return new Block.Heading("Measured", 3);
        yield return new Block.Facts([.. photo.Measures.Select(measure => (measure.Role, measure.Note.Length == 0 ? measure.Statement : $"{measure.Statement}\n{measure.Note}"))]);
        foreach (var measure in photo.Measures.Where(measure => !measure.Budget.IsEmpty))
        {
            yield return new Block.Heading($"Uncertainty budget: {measure.Role}", 3);
            yield return new Block.Grid(["source", "standard uncertainty", "share, mm", "basis"], measure.Budget);
        }

        if (!photo.Optics.IsEmpty)
        {
            yield return new Block.Heading("What the glass could do", 3);
            yield return new Block.Grid(["figure", "value", "rests on"], photo.Optics);
            yield return new Block.Sentences(photo.OpticsNotes);
        }
    }

    private static IEnumerable<Block> Closing() =>
    [
        new Block.Heading("What the words for ratios mean", 3),
        new Block.Grid(["ratio from", "words"], [.. VerbalScale.Bands.Select(band => ImmutableArray.Create(Invariant($"{band.From:#,0}"), band.Words))]),
        new Block.Aside(VerbalScale.Note),
        new Block.Heading("Take care", 3),
        new Block.Sentences(Cautions.Sentences),
    ];

    private static string Sure(PaperLetter letter) => letter.Character is " " or "?" ? string.Empty : Percent(Measures.Probability.From(letter.Probability));
}
