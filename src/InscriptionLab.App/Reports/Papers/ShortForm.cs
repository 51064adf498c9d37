using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>
/// One page an object under the categories of Object ID, the international standard for describing cultural objects (J. Paul Getty Trust,
/// 1999; ICOM): photographs, then its nine questions. What photos cannot say is left open to be written in by hand; the maker among it,
/// because a name that is cut is not yet a maker.
/// </summary>
internal static class ShortForm
{
    private const string Open = "to be written in";

    /// <summary>Most lines of lettering on the page.</summary>
    private const int MostLines = 8;

    internal static Paper Of(string title, ImmutableArray<PaperObject> objects, DateTimeOffset made, string program) =>
        new(title, made, program, [.. objects.Select(One)]);

    private static string Features(PaperObject shown) =>
        string.Join('\n', new[] { shown.Note }.OfType<string>().Concat(shown.Construction.Select(seen => $"{seen.Name}: {seen.Value}")));

    private static ImmutableArray<Block> One(PaperObject shown)
    {
        var blocks = new List<Block> { new Block.Heading(shown.ShownTitle, 1) };
        if (shown.Photos.FirstOrDefault(photo => !photo.Pictures.IsEmpty) is { } pictured)
        {
            blocks.Add(new Block.Figure(pictured.Pictures[0] with { Marks = [], Caption = $"{pictured.Name}, SHA-256 {pictured.Sha256}" }));
        }

        ImmutableArray<string> lines = [.. shown.Sets.SelectMany(set => set.Lines).Concat(shown.Photos.SelectMany(photo => photo.Lines)).Select(line => line.Correction is { } hand ? $"{line.Leiden}\n{hand}" : line.Leiden).Distinct()];
        ImmutableArray<string> sizes = [.. shown.Photos.SelectMany(photo => photo.Measures).Select(measure => $"{measure.Role}: {measure.Statement}"), .. shown.Photos.SelectMany(photo => photo.Sizes.Take(1))];
        ImmutableArray<string> years = [.. shown.Sets.Select(set => set.Evidence).Concat(shown.Photos.Select(photo => photo.Evidence)).Select(EvidenceBlocks.IntervalOf).OfType<string>().Distinct()];
        blocks.Add(new Block.Facts(
        [
            ("Type of object", Open),
            ("Materials and techniques", "Brass, engraved lettering (to be confirmed on the object)"),
            ("Measurements", sizes.IsEmpty ? Open : string.Join('\n', sizes)),
            ("Inscriptions and markings", lines.IsEmpty ? "none read" : string.Join('\n', lines.Take(MostLines)) + (lines.Length > MostLines ? Invariant($"\nand {lines.Length - MostLines} more lines") : string.Empty)),
            ("Distinguishing features", Features(shown) is { Length: > 0 } features ? features : Open),
            ("Title", shown.Title ?? Open),
            ("Subject", Open),
            ("Date or period", years.IsEmpty ? Open : string.Join('\n', years) + "\nas words and parts tell; they may have been cut later or exchanged"),
            ("Maker", Open),
            ("Inventory number", shown.Key),
        ]));
        blocks.Add(new Block.Aside("Lettering as the program read it in the photographs, after the Leiden conventions and uncorrected. The maker is left open on purpose: a name that is cut is not yet a maker. A finding is evidence, never a certificate."));
        return [.. blocks];
    }
}
