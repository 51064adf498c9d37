using System;
using System.Collections.Frozen;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using InscriptionLab.App.Listing;
using InscriptionLab.Evidence;
using InscriptionLab.Outcomes;
using InscriptionLab.References;

namespace InscriptionLab.Fuzz;

/// <summary>The lists, tables and checklists that a user hands over.</summary>
internal static class ListTargets
{
    private const string File = "given";

    /// <summary>A mapping that a stranger's table is read by: two columns, a year, a word of theirs.</summary>
    private static readonly ImportMapping Mapped = new()
    {
        Columns = new Dictionary<string, string> { ["form"] = "mark", ["maker"] = "house", ["from"] = "year", ["status"] = "kind" }.ToFrozenDictionary(StringComparer.Ordinal),
        Constants = new Dictionary<string, string> { ["source"] = "a table" }.ToFrozenDictionary(StringComparer.Ordinal),
        Words = new Dictionary<string, FrozenDictionary<string, string>> { ["status"] = new Dictionary<string, string> { ["own"] = "attested" }.ToFrozenDictionary(StringComparer.Ordinal) }.ToFrozenDictionary(StringComparer.Ordinal),
    };

    internal static void List(byte[] input) => _ = new ReferenceListReader().Read(File, input);

    /// <summary>A list that was taken is written and read again, as CSV and as JSON: it must be the same list.</summary>
    internal static void Round(byte[] input)
    {
        var list = new ReferenceListReader().Read(File, input).List;
        foreach (var text in (ReadOnlySpan<string>)[ReferenceListWriter.Csv(list.Forms), ReferenceListWriter.Json(list.Name, list.Forms)])
        {
            ReferenceList again;
            try
            {
                again = new ReferenceListReader().Read(File, Encoding.UTF8.GetBytes(text)).List;
            }
            catch (InscriptionLabException refused)
            {
                throw new InvalidOperationException($"What was written is refused: {text}", refused);
            }

            if (!again.Forms.SequenceEqual(list.Forms))
            {
                throw new InvalidOperationException($"What was written is read otherwise: {text}");
            }
        }
    }

    internal static void Mapping(byte[] input) => _ = ImportMapping.Read(File, input);

    internal static void Table(byte[] input) => _ = new TableImport(Mapped).Read(File, input);

    internal static void LinkedArt(byte[] input) => _ = new LinkedArtImport("attested").Read(File, input);

    internal static void History(byte[] input)
    {
        var list = Scratch.PathOf("list.csv");
        Scratch.Write("list.csv.history.jsonl", input);
        _ = new ListFile(list, TimeProvider.System).History();
    }

    internal static void Checklist(byte[] input) => _ = new ConstructionReader(ConstructionTable.Read(File, input)).Blank();

    internal static void Construction(byte[] input) => _ = new ConstructionReader(ConstructionTable.Default).Read(File, input);
}
