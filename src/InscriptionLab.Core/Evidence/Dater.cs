using System;
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
    private readonly ReferenceList _references;
    private readonly EvidenceOptions _options;
    private readonly Comparer _addresses;
    private readonly JudgeOptions _judging = new();

    /// <summary>Makes a dater; the addresses of the list are indexed once.</summary>
    /// <param name="references">The list.</param>
    /// <param name="options">Bounds; null for the defaults.</param>
    public Dater(ReferenceList references, EvidenceOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(references);
        _references = references;
        _options = options ?? new EvidenceOptions();
        var streets = references.Forms.Where(form => form.Address is not null).Select(form => RowYears.Street(form.Address!)).Distinct();
        _addresses = new Comparer(references with { Forms = [.. streets.Select(street => new ReferenceForm(street, street, AttestationStatus.Attested))] });
    }

    /// <summary>Dates a reading.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="finding">The finding on it against the same list.</param>
    /// <param name="second">A second house that the piece names; null where none.</param>
    /// <param name="construction">What a person recorded of the piece; null where nothing.</param>
    public Dating Date(Reading reading, Finding finding, SecondName? second = null, ConstructionRecord? construction = null)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(finding);
        return Dating.Of(
            [
                .. OfForm(finding),
                .. OfAddress(reading, finding.Leading?.Form.Maker, second?.Nearest.Form.Maker),
                .. OfSecond(second),
                .. OfWords(reading),
                .. OfHouseWords(reading, finding.Leading?.Form.Maker),
                .. OfStyle(reading),
                .. OfConstruction(construction),
            ],
            _options.Coverage);
    }

    /// <summary>Gives how a statement calls words of the table.</summary>
    internal static string WordsOf(DatedWording wording) => $"the words '{wording.Words}'";

    /// <summary>Gives how a statement calls words of a house.</summary>
    internal static string WordsOf(string words, string maker) => $"the words '{words}' of {maker}";

    /// <summary>Years of a form that is spelt as on the piece; a mark of modern pieces has none.</summary>
    private IEnumerable<DateStatement> OfForm(Finding finding)
    {
        if (finding is not { Outcome: FindingOutcome.Agrees or FindingOutcome.Differs, Leading: { SpellingDifferences.IsEmpty: true, Form: { Status: not AttestationStatus.Reproduction } form } })
        {
            return [];
        }

        return Statement($"the form '{form.Form}'", RowYears.Like(form, _references), form.Source, DateKind.Form);
    }

    private IEnumerable<DateStatement> OfSecond(SecondName? second) => second is { IsSpeltAsListed: true, Nearest.Form: var form }
        ? Statement($"the second name '{form.Form}'", RowYears.Like(form, _references), form.Source, DateKind.SecondName)
        : [];

    /// <summary>Years in which the list has the house of the form at the address, or any house where the form tells of none.</summary>
    private IEnumerable<DateStatement> OfAddress(Reading reading, string? maker, string? second)
    {
        var nearest = _addresses.Compare(reading).Nearest.FirstOrDefault(address => new FormStanding(address, _judging).IsConfirmed);
        if (nearest is null)
        {
            return [];
        }

        var rows = _references.Forms.Where(row => row.Address is { } address && RowYears.Street(address) == nearest.Form.Form).ToArray();
        var own = rows.Where(row => row.Maker == maker).ToArray();
        return own.Length > 0
            ? Statement($"the address '{nearest.Form.Form}' of {maker}", own, own[0].Source, DateKind.Address)
            : Statement(
                $"the address '{nearest.Form.Form}', which the list gives to {string.Join(" and ", rows.Select(row => row.Maker).Distinct())}",
                rows,
                rows[0].Source,
                maker is null || rows.Any(row => row.Maker == second) ? DateKind.Address : DateKind.AddressOfOthers);
    }

    private IEnumerable<DateStatement> OfWords(Reading reading)
    {
        var words = new WordsRead(reading, _options.ReadableLetter);
        return EvidenceTables.Wordings.Where(words.Has).Select(wording => new DateStatement(WordsOf(wording), new DateInterval(wording.NotBefore, null), wording.Source, DateKind.Wording, DatedWording.Coverage));
    }

    /// <summary>Words that the list has beside forms of the house.</summary>
    private IEnumerable<DateStatement> OfHouseWords(Reading reading, string? maker)
    {
        var worded = _references.Forms.Where(row => row.Wording is not null && row.Maker == maker).ToArray();
        if (worded.Length == 0)
        {
            return [];
        }

        var words = new WordsRead(reading, _options.ReadableLetter);
        return worded.GroupBy(row => row.Wording!).Where(rows => words.Has(rows.Key)).SelectMany(rows => Statement(WordsOf(rows.Key, maker!), rows, rows.First().Source, DateKind.Wording));
    }

    private IEnumerable<DateStatement> OfStyle(Reading reading) => reading.Style is [var style, ..] && style.Probability.Value >= _options.KnownStyle
        ? EvidenceTables.Styles.Where(row => row.Style == style.Style).Select(row => new DateStatement($"the {style.Style} lettering", row.Years, row.Source, DateKind.Style, row.Coverage))
        : [];

    private static IEnumerable<DateStatement> OfConstruction(ConstructionRecord? construction) => (construction?.Seen ?? [])
        .Where(row => row.IsDated)
        .Select(row => new DateStatement($"the {ConstructionRecord.Plain(row.Feature)} ({ConstructionRecord.Plain(row.Observation)})", row.Years, $"{row.Basis}: {row.Source}", DateKind.Construction, row.Coverage) { Part = row.Part });

    private static IEnumerable<DateStatement> Statement(string what, IEnumerable<ReferenceForm> rows, string? source, DateKind kind) =>
        RowYears.Of(rows) is var (years, coverage) ? [new DateStatement(what, years, source ?? "the reference list", kind, coverage)] : [];
}
