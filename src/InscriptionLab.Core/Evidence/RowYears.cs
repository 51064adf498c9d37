using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Readings;
using InscriptionLab.References;

namespace InscriptionLab.Evidence;

/// <summary>What rows of the list tell of years.</summary>
internal static class RowYears
{
    private const char AddressDelimiter = ',';

    /// <summary>Gives the shortest interval that holds the years of all dated rows, and how far the least certain of them is trusted; null where none is dated.</summary>
    internal static (DateInterval Years, double Coverage)? Of(IEnumerable<ReferenceForm> rows)
    {
        var dated = rows.Where(row => row.From is not null || row.To is not null).ToArray();
        return dated.Length == 0
            ? null
            : (dated.Select(row => new DateInterval(row.From, row.To)).Aggregate((first, second) => first.Hull(second)), dated.Min(row => Coverage(row.Certainty)));
    }

    /// <summary>Gives the address without its town, where what is left still has a name in it and not a number alone.</summary>
    internal static string Street(string address) => address.LastIndexOf(AddressDelimiter) is > 0 and var end && address.AsSpan(0, end).ContainsAnyInRange('A', 'z') ? address[..end] : address;

    /// <summary>Tells whether two forms have the same letters in any case and shape.</summary>
    internal static bool SameSpelling(string first, string second) => Graphemes.Of(first).Select(LetterFold.Of).SequenceEqual(Graphemes.Of(second).Select(LetterFold.Of));

    /// <summary>Gives the rows for the same house that are spelt like a form and listed as the same.</summary>
    internal static IEnumerable<ReferenceForm> Like(ReferenceForm form, ReferenceList references) =>
        references.Forms.Where(row => row.Status == form.Status && row.Maker == form.Maker && SameSpelling(row.Form, form.Form));

    /// <summary>How far years of the list are trusted: directories run late and houses worked on after their last entry (common practice; the figures are choices).</summary>
    private static double Coverage(FormCertainty? certainty) => certainty switch
    {
        FormCertainty.Certain => 0.95,
        FormCertainty.Probable => 0.9,
        FormCertainty.Possible => 0.75,
        _ => 0.85,
    };
}
