using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Evidence;

namespace InscriptionLab.App.Records;

/// <summary>Turns the weighing into the record that is written as JSON; rounds, and changes nothing else.</summary>
internal static class EvidenceRecordMaker
{
    private const int Digits = 4;

    internal static EvidenceRecord? Of(EvidenceReport report) => report.IsEmpty ? null : new EvidenceRecord(
        report.House,
        report.Rows,
        [.. report.Items.Select(Of)],
        report.Ratios.IsEmpty ? null : Of(report.Ratios),
        Of(report.Dating),
        report.Second is { Nearest.Form: var form } ? new SecondNameRecord(form.Form, form.Maker) : null,
        report.Remarks,
        report.Prior?.AsGiven,
        report.Posterior is { } posterior ? new PosteriorRecord(Math.Round(posterior.House, Digits), Math.Round(posterior.Period, Digits), Math.Round(posterior.Modern, Digits)) : null,
        report.Deciding?.Sentence,
        EvidenceSentences.Scale);

    private static EvidenceItemRecord Of(EvidenceItem item) => new(
        item.Statement,
        item.Weight.Feature,
        item.Weight.Observation,
        Of(item.Ratios),
        item.Weight.Basis,
        item.Weight.Source,
        item.Weight.WouldChange);

    private static RatiosRecord Of(ImmutableArray<PairRatio> ratios) => new(
        Math.Round(ratios[0].Log10Ratio, Digits),
        Math.Round(ratios[1].Log10Ratio, Digits),
        Math.Round(ratios[2].Log10Ratio, Digits),
        ratios.Any(ratio => ratio.IsCapped));

    private static YearsRecord Of(Dating dating) => new(
        dating.Years?.From,
        dating.Years?.To,
        Math.Round(dating.Coverage, Digits),
        !dating.IsApart,
        [.. dating.Statements.Select(statement => new DateStatementRecord(statement.What, Words.For(statement.Kind), statement.Interval.From, statement.Interval.To, statement.Coverage, statement.Source))],
        dating.Conflicts,
        dating.Next?.Sentence);
}
