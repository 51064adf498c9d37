using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.App.Records;
using InscriptionLab.App.Reports;
using InscriptionLab.Comparison;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;

namespace InscriptionLab.Page.Answers;

/// <summary>Turns a finding into what the page shows.</summary>
internal static class FindingMaker
{
    internal static FindingAnswer Of(Finding finding, EvidenceReport evidence) => new(
        Words.For(finding.Outcome),
        [.. finding.Nearest.Select(Of)],
        finding.Reasons,
        finding.CannotDecide,
        CommandWords.Without(finding.Retake))
    {
        Evidence = evidence.IsEmpty ? null : new EvidenceAnswer(
            EvidenceWords.Propositions,
            [.. evidence.Items.Select(item => new EvidenceItemAnswer(item.Statement, EvidenceWords.ValuesOf(item.Ratios), $"{item.Weight.Basis}: {item.Weight.Source}", item.Weight.WouldChange))],
            [.. evidence.Sentences.Skip(evidence.Items.Length).Where(sentence => !evidence.Dating.Sentences.Contains(sentence)).Select(ForPage)],
            EvidenceSentences.Scale)
        {
            Years = Of(evidence.Dating),
        },
    };

    /// <summary>On the page odds are given with the construction, and not on a command line.</summary>
    private static string ForPage(string sentence) => sentence.StartsWith(EvidenceSentences.NoOdds, StringComparison.Ordinal)
        ? $"{EvidenceSentences.NoOdds}; give yours under Construction."
        : sentence;

    private static YearsAnswer? Of(Dating dating) => dating.Years is not { } years ? null : new YearsAnswer(
        years.ToString(),
        years.From,
        years.To,
        dating.Coverage,
        [.. dating.Statements.Select(statement => new YearsStatementAnswer(statement.What, statement.Interval.ToString(), statement.Interval.From, statement.Interval.To, statement.Coverage, statement.Source))],
        [dating.IsApart ? Dating.Apart : Dating.Reach, .. dating.Conflicts, .. dating.Next is { } next ? ImmutableArray.Create(next.Sentence) : []],
        YearWeights.FirstYear,
        YearWeights.LastYear);

    private static NearestAnswer Of(NearestForm nearest) => new(
        nearest.Form.Form,
        nearest.Form.Maker,
        Words.For(nearest.Form.Status),
        nearest.Form.Style,
        nearest.Form.From,
        nearest.Form.To,
        nearest.Form.Address,
        nearest.Form.Source,
        nearest.Form.Note,
        nearest.LogLikelihoodRatio is { } ratio && double.IsFinite(ratio) ? ratio / Math.Log(10) : null,
        nearest.Agreement.Value,
        Places(nearest),
        [.. nearest.Differences.Select(DifferenceWords.For)]);

    private static ImmutableArray<PlaceAnswer> Places(NearestForm nearest)
    {
        // Agreements are listed in reading order, as the places are.
        var agreements = new Queue<LetterDifference>(nearest.Agreements.OrderBy(place => place.FormIndex));
        var places = ImmutableArray.CreateBuilder<PlaceAnswer>();
        foreach (var place in FormBesideReading.Of(nearest))
        {
            if (place.Difference is { } difference)
            {
                places.Add(new PlaceAnswer(place.Attested, place.Read, true, WordOf(difference.Kind), difference.Probability.Value, difference.LineIndex, difference.LetterIndex));
            }
            else if (agreements.TryPeek(out var next) && next.Read == place.Read)
            {
                agreements.Dequeue();
                places.Add(new PlaceAnswer(place.Attested, place.Read, false, string.Empty, next.Probability.Value, next.LineIndex, next.LetterIndex));
            }
            else
            {
                places.Add(new PlaceAnswer(place.Attested, place.Read, false, string.Empty, 0, -1, -1));
            }
        }

        return places.ToImmutable();
    }

    private static string WordOf(DifferenceKind kind) => kind switch
    {
        DifferenceKind.Replaced => "replaced",
        DifferenceKind.Missing => "missing",
        DifferenceKind.Added => "added",
        DifferenceKind.Swapped => "swapped",
        DifferenceKind.Case => "case",
        DifferenceKind.LetterForm => "letter-form",
        DifferenceKind.Punctuation => "punctuation",
        DifferenceKind.Spacing => "spacing",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No word for this kind."),
    };
}
