using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Cataloguing.Rows;

namespace InscriptionLab.Cataloguing;

/// <summary>Works out what a line reads after the corrections that stand; the machine's own reading stays beside it.</summary>
internal static class ReadingNow
{
    /// <summary>Gives the text of the latest correction that stands, or null where none does.</summary>
    internal static string? Of(int line, IEnumerable<CorrectionRow> corrections) => corrections
        .Where(row => row.Line == line && row.WithdrawnAt is null)
        .OrderBy(row => row.Id)
        .LastOrDefault()?.Becomes;

    /// <summary>Writes the corrected text into the line's columns.</summary>
    internal static void Apply(LineRow line, IEnumerable<CorrectionRow> corrections)
    {
        line.Corrected = Of(line.Position, corrections);
        line.CorrectedFolded = line.Corrected is null ? null : Folding.Of(line.Corrected);
    }
}
