using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Advice;
using InscriptionLab.Readings;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports;

/// <summary>What a report adds to a line as read: its form after the Leiden conventions, letters that are blown out, and what the second reader made of it.</summary>
internal static class LineNotes
{
    private static readonly LeidenTranscriber Leiden = new(new LeidenOptions());

    /// <summary>Gives the notes of a line, each with its name; none where there is nothing to add.</summary>
    /// <param name="line">The line.</param>
    /// <param name="index">Its number in the reading, from 0.</param>
    /// <param name="burnt">The burnt places of the photo's lines; none for a reading of several photos.</param>
    internal static IEnumerable<(string Name, string Sentence)> Of(LineReading line, int index, ImmutableArray<BurntPlace> burnt)
    {
        var diplomatic = Leiden.Text(line.Letters);
        if (diplomatic != line.Text)
        {
            yield return ("Leiden", diplomatic);
        }

        if (BurntWords.Of(line, index, burnt) is { } blown)
        {
            yield return ("blown out", blown);
        }

        if (line.Second is { } second)
        {
            var places = line.Letters.Zip(second.Agrees).Where(place => !place.First.IsSpace).ToList();
            yield return ("second", second.Text.Length == 0
                ? $"{second.Reader} reads nothing here."
                : $"{second.Reader} reads '{second.Text}': the same as the first reader in {places.Count(place => place.Second)} of {Counted(places.Count, "letter", "letters")}. It has no vote: it was made for print.");
        }
    }
}
