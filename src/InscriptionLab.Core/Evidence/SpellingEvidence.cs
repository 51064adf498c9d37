using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.Findings;
using InscriptionLab.References;

namespace InscriptionLab.Evidence;

/// <summary>
/// The spelling as the picture shows it: how probable it is that an attested form is cut, a listed period copy, a listed reproduction, or
/// a spelling that is not listed, and the weights of these four mixed in that proportion. A letter that the photo leaves open therefore gives a
/// ratio near 1.
/// </summary>
internal static class SpellingEvidence
{
    /// <summary>Names of the four in the table of weights.</summary>
    private static readonly ImmutableArray<string> Names = ["attested", "period-copy", "reproduction", "other"];

    private const int Attested = 0;
    private const int Other = 3;

    /// <summary>A share from which the photo is said to show one of the four.</summary>
    private const double Shown = 0.8;

    /// <summary>Gives what was seen and its weight; null where words or line ends, and not letters, leave the spelling open.</summary>
    /// <param name="finding">The finding; it names a form.</param>
    /// <param name="attested">Attested rows that the list has for the house.</param>
    internal static (string Statement, FeatureWeight Weight)? Of(Finding finding, int attested)
    {
        var leading = new FormStanding(finding.Leading!, new JudgeOptions());
        if (finding.Outcome == FindingOutcome.Undecided && (leading.IsExcluded || !leading.Words.AbsentWords.IsEmpty || leading.Nearest.Differences.Any(FormStanding.IsBeforeLine)))
        {
            return null;
        }

        var shares = Shares(finding, leading);
        var most = Array.IndexOf(shares, shares.Max());
        var rows = Rows();
        double Mixed(Proposition proposition) => Under(rows, proposition, attested).Zip(shares, (weight, share) => weight * share).Sum();
        var weight = rows[most] with
        {
            Observation = shares[most] >= Shown ? Names[most] : "open",
            House = Mixed(Proposition.House),
            Period = Mixed(Proposition.PeriodOther),
            Modern = Mixed(Proposition.Modern),
        };
        return (Statement(leading.Nearest.Form, shares, most), weight);
    }

    /// <summary>Gives what a clearer photo may show, each answer with its weights and how probable this photo leaves it.</summary>
    internal static ImmutableArray<(FeatureWeight Weight, double Share)> Answers(Finding finding, int attested)
    {
        var rows = Rows();
        var house = Under(rows, Proposition.House, attested);
        var shares = Shares(finding, new FormStanding(finding.Leading!, new JudgeOptions()));
        return [.. rows.Select((row, at) => (row with { House = house[at] }, shares[at])).Where(answer => answer.Item2 > 0)];
    }

    private static FeatureWeight[] Rows() => [.. Names.Select(name => EvidenceTables.Weight("spelling", name))];

    /// <summary>
    /// However rare the table has it that a house spells itself in a way not listed, n rows that spell it as listed do not show it to be rarer than one in n + 2
    /// (Laplace's rule of succession); what is added there is taken from the spelling as listed.
    /// </summary>
    private static double[] Under(FeatureWeight[] rows, Proposition proposition, int attested)
    {
        var weights = rows.Select(row => row.Under(proposition)).ToArray();
        if (proposition == Proposition.House)
        {
            var raised = Math.Max(0, (1.0 / (attested + 2)) - weights[Other]);
            weights[Other] += raised;
            weights[Attested] -= raised;
        }

        return weights;
    }

    private static double[] Shares(Finding finding, FormStanding leading)
    {
        var forms = finding.Nearest
            .Where(near => near.Span is { } span && near.Form.Maker == leading.Nearest.Form.Maker && span.Overlaps(leading.Nearest.Span!))
            .Select(near => near.Form.Equals(leading.Nearest.Form) ? leading : new FormStanding(near, new JudgeOptions()))
            .Where(form => form == leading || !form.IsPartOf(leading))
            .ToArray();
        double Best(AttestationStatus status) => forms.Where(form => form.Nearest.Form.Status == status).Select(form => form.Nearest.Agreement.Value).DefaultIfEmpty(0).Max();
        double[] listed = [Best(AttestationStatus.Attested), Best(AttestationStatus.PeriodCopy), Best(AttestationStatus.Reproduction)];
        var sum = listed.Sum();
        return sum > 1 ? [.. listed.Select(share => share / sum), 0] : [.. listed, 1 - sum];
    }

    private static string Statement(ReferenceForm form, double[] shares, int most)
    {
        if (shares[most] >= Shown)
        {
            return most == Other
                ? $"The spelling is not that of '{form.Form}' or of any other row for {form.Maker}."
                : $"The spelling is that of '{form.Form}', listed as {Names[most]}.";
        }

        IEnumerable<string> parts = Names.Zip(shares).Where(pair => pair.Second >= 0.01).Select(pair => string.Create(CultureInfo.InvariantCulture, $"{(pair.First == "other" ? "a spelling not listed" : pair.First)} {pair.Second:0.00}"));
        return $"The photo leaves the spelling open beside '{form.Form}': {string.Join(", ", parts)}.";
    }
}
