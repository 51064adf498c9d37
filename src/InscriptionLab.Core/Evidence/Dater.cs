using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Findings;
using InscriptionLab.Readings;
using InscriptionLab.References;

namespace InscriptionLab.Evidence;

/// <summary>Puts together what the form, the address and the words on a piece tell of years. A year that the engraver cut is not taken for the year of the piece.</summary>
public sealed class Dater
{
    private const char AddressDelimiter = ',';

    private readonly ReferenceList _references;
    private readonly EvidenceOptions _options;
    private readonly Comparer _addresses;
    private readonly JudgeOptions _judging = new();

    /// <summary>Makes a dater; the addresses of the list are indexed once.</summary>
    /// <param name="references">The list.</param>
    /// <param name="options">Bounds; null for the defaults.</param>
    public Dater(ReferenceList references, EvidenceOptions? options = null)
    {
        System.ArgumentNullException.ThrowIfNull(references);
        _references = references;
        _options = options ?? new EvidenceOptions();
        var streets = references.Forms.Where(form => form.Address is not null).Select(form => Street(form.Address!)).Distinct();
        _addresses = new Comparer(references with { Forms = [.. streets.Select(street => new ReferenceForm(street, street, AttestationStatus.Attested))] });
    }

    /// <summary>Dates a reading.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="finding">The finding on it against the same list.</param>
    public Dating Date(Reading reading, Finding finding)
    {
        System.ArgumentNullException.ThrowIfNull(reading);
        System.ArgumentNullException.ThrowIfNull(finding);
        return Dating.Of([.. OfForm(finding), .. OfAddress(reading, finding.Leading?.Form.Maker), .. OfWords(reading)]);
    }

    /// <summary>Years of a form that is spelt as on the piece; a mark of modern pieces has none.</summary>
    private IEnumerable<DateStatement> OfForm(Finding finding)
    {
        if (finding is not { Outcome: FindingOutcome.Agrees or FindingOutcome.Differs, Leading: { SpellingDifferences.IsEmpty: true, Form: { Status: not AttestationStatus.Reproduction } form } })
        {
            return [];
        }

        var rows = _references.Forms.Where(row => row.Status == form.Status && row.Maker == form.Maker && SameSpelling(row.Form, form.Form));
        return Statement($"the form '{form.Form}'", rows, form.Source);
    }

    /// <summary>Years in which the list has the house of the form at the address, or any house where the form tells of none.</summary>
    private IEnumerable<DateStatement> OfAddress(Reading reading, string? maker)
    {
        var nearest = _addresses.Compare(reading).Nearest.FirstOrDefault(address => new FormStanding(address, _judging).IsConfirmed);
        if (nearest is null)
        {
            return [];
        }

        var rows = _references.Forms.Where(row => row.Address is { } address && Street(address) == nearest.Form.Form).ToArray();
        var own = rows.Where(row => row.Maker == maker).ToArray();
        return own.Length > 0
            ? Statement($"the address '{nearest.Form.Form}' of {maker}", own, own[0].Source)
            : Statement($"the address '{nearest.Form.Form}', which the list gives to {string.Join(" and ", rows.Select(row => row.Maker).Distinct())}", rows, rows[0].Source);
    }

    private IEnumerable<DateStatement> OfWords(Reading reading)
    {
        var words = new WordsRead(reading, _options.ReadableLetter);
        return EvidenceTables.Wordings.Where(words.Has).Select(wording => new DateStatement($"the words '{wording.Words}'", new DateInterval(wording.NotBefore, null), wording.Source));
    }

    private static IEnumerable<DateStatement> Statement(string what, IEnumerable<ReferenceForm> rows, string? source)
    {
        var intervals = rows.Where(row => row.From is not null || row.To is not null).Select(row => new DateInterval(row.From, row.To)).ToArray();
        return intervals.Length == 0 ? [] : [new DateStatement(what, intervals.Aggregate((first, second) => first.Hull(second)), source ?? "the reference list")];
    }

    private static string Street(string address) => address.LastIndexOf(AddressDelimiter) is > 0 and var end ? address[..end] : address;

    private static bool SameSpelling(string first, string second) => Graphemes.Of(first).Select(LetterFold.Of).SequenceEqual(Graphemes.Of(second).Select(LetterFold.Of));
}
