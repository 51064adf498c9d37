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

    private static ImmutableArray<Block> One(PaperObject shown)
    {
        var blocks = new List<Block> { new Block.Heading(shown.ShownTitle, 1) };
        if (shown.Photos.FirstOrDefault(photo => !photo.Pictures.IsEmpty) is { } pictured)
        {
            blocks.Add(new Block.Figure(pictured.Pictures[0] with { Marks = [], Caption = $"{pictured.Name}, SHA-256 {pictured.Sha256}" }));
        }

        ImmutableArray<string> lines = [.. shown.Photos.SelectMany(photo => photo.Lines).Select(line => line.Correction is { } hand ? $"{line.Leiden}\n{hand}" : line.Leiden).Distinct()];
        ImmutableArray<string> sizes = [.. shown.Photos.SelectMany(photo => photo.Measures).Select(measure => $"{measure.Role}: {measure.Statement}")];
        blocks.Add(new Block.Facts(
        [
            ("Type of object", Open),
            ("Materials and techniques", "Brass, engraved lettering (to be confirmed on the object)"),
            ("Measurements", sizes.IsEmpty ? Open : string.Join('\n', sizes)),
            ("Inscriptions and markings", lines.IsEmpty ? "none read" : string.Join('\n', lines.Take(MostLines)) + (lines.Length > MostLines ? Invariant($"\nand {lines.Length - MostLines} more lines") : string.Empty)),
            ("Distinguishing features", shown.Note ?? Open),
            ("Title", shown.Title ?? Open),
            ("Subject", Open),
            ("Date or period", Open),
            ("Maker", Open),
            ("Inventory number", shown.Key),
        ]));
        blocks.Add(new Block.Aside("Lettering as the program read it in the photographs, after the Leiden conventions and uncorrected. The maker is left open on purpose: a name that is cut is not yet a maker. A finding is evidence, never a certificate."));
        return [.. blocks];
    }
}
