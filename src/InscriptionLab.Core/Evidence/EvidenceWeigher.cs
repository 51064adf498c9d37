using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Findings;
using InscriptionLab.Readings;
using InscriptionLab.References;

namespace InscriptionLab.Evidence;

/// <summary>
/// Weighs spelling, style, layout, direction, place, size and spacing of the letters, years, a second name and construction under three propositions: the house, another of its
/// time, a modern decorative piece. The features are taken as independent; each ratio is capped, and all together by the number of rows for the house.
/// </summary>
public sealed class EvidenceWeigher
{
    private readonly ReferenceList _references;
    private readonly EvidenceOptions _options;
    private readonly Dater _dater;
    private readonly SecondNameFinder _second;
    private readonly ConstructionTable _table;

    /// <summary>Makes a weigher for a list.</summary>
    /// <param name="references">The list.</param>
    /// <param name="options">Bounds; null for the defaults.</param>
    /// <param name="comparer">The list's comparer, to be shared; null to make one.</param>
    /// <param name="table">The checklist whose open questions are looked through; null for the one that the program carries.</param>
    public EvidenceWeigher(ReferenceList references, EvidenceOptions? options = null, Comparer? comparer = null, ConstructionTable? table = null)
    {
        ArgumentNullException.ThrowIfNull(references);
        _references = references;
        _options = options ?? new EvidenceOptions();
        _dater = new Dater(references, _options);
        _second = new SecondNameFinder(comparer ?? new Comparer(references));
        _table = table ?? ConstructionTable.Default;
    }

    /// <summary>Weighs a reading and its finding.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="finding">The finding on it against the same list.</param>
    /// <param name="known">What is known beside the reading; null for nothing.</param>
    public EvidenceReport Weigh(Reading reading, Finding finding, Circumstances? known = null)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(finding);
        known ??= Circumstances.None;
        var house = finding.Leading?.Form.Maker;
        var second = _second.Find(reading, finding);
        var dating = _dater.Date(reading, finding, second, known.Construction);
        if (house is not null || !dating.Statements.IsEmpty)
        {
            var questions = new DateQuestions(_references, _options).Open(reading, finding, dating.Statements, known.Construction?.Table ?? _table, known.Construction);
            dating = dating with { Next = DateNarrower.Next(questions, dating.Statements, _options.Coverage) };
        }

        ReferenceForm[] rows = [.. _references.Forms.Where(form => form.Maker == house)];
        var bounds = new RatioBounds(_options, rows.Length);
        ImmutableArray<EvidenceItem> items = house is null
            ? []
            : [.. Observations(reading, finding, rows, dating, second, known).Select(seen => new EvidenceItem(seen.Statement, seen.Weight, bounds.Of(seen.Weight)))];
        ImmutableArray<PairRatio> ratios = items.IsEmpty ? [] : bounds.Together([.. items.Select(item => item.Weight)]);
        var open = items.IsEmpty ? [] : new OpenFeatures(finding, [.. rows.Where(form => form.Status == AttestationStatus.Attested)], items, dating, _options).All();
        return new EvidenceReport(house, rows.Length, items, ratios, dating)
        {
            Prior = known.Prior,
            Posterior = known.Prior is { } prior && !ratios.IsEmpty ? Posterior.Of(prior, ratios) : null,
            Remarks = known.Construction?.Remarks ?? [],
            Second = second,
            Deciding = items.IsEmpty ? null : new Decider(items, rows.Length, known.Prior, _options).Next(open),
        };
    }

    private IEnumerable<(string Statement, FeatureWeight Weight)> Observations(Reading reading, Finding finding, ReferenceForm[] rows, Dating dating, SecondName? second, Circumstances known)
    {
        ReferenceForm[] attested = [.. rows.Where(form => form.Status == AttestationStatus.Attested)];
        if (SpellingEvidence.Of(finding, attested.Length) is { } spelling)
        {
            yield return spelling;
        }

        foreach (var seen in new LetteringEvidence(reading, finding, attested, known, _options).All()
            .Concat(new LetterSizeEvidence(reading, finding, attested, known).All())
            .Concat(DateEvidence.Of(dating, second)))
        {
            yield return seen;
        }

        if (known.Construction is { Measures: { IsEmpty: false } measures })
        {
            yield return MeasuredValue.Unlike(measures) is { } unlike
                ? ($"Of the measured values, {unlike}: unlike catalogued hand telescopes, or of different parts.", EvidenceTables.Weight("measures", "outside"))
                : ("The measured values are those of catalogued hand telescopes.", EvidenceTables.Weight("measures", "within"));
        }

        foreach (var other in known.HousesInOtherPhotos.Where(other => other != finding.Leading!.Form.Maker).Take(1))
        {
            yield return ($"Another photo shows the name of {other}: the photos show two objects, or parts that may not belong together.", EvidenceTables.Weight("photos", "two-houses"));
        }
    }
}
