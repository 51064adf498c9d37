using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using InscriptionLab.Comparison;

namespace InscriptionLab.Evidence;

/// <summary>Whether address, words, construction and a second house fit the years of the form.</summary>
internal static class DateEvidence
{
    internal static IEnumerable<(string Statement, FeatureWeight Weight)> Of(Dating dating, SecondName? second)
    {
        var form = dating.Statements.FirstOrDefault(statement => statement.Kind == DateKind.Form);
        foreach (var address in dating.Statements.Where(statement => statement.Kind == DateKind.AddressOfOthers).Take(1))
        {
            yield return ($"The list has {address.What}, and not for the house.", EvidenceTables.Weight("address", "of-others"));
        }

        foreach (var address in dating.Statements.Where(statement => statement.Kind == DateKind.Address).Take(1))
        {
            yield return Fit("address", address, form is null ? [] : [form], "of-house");
        }

        DateStatement[] house = [.. dating.Statements.Where(statement => statement.Kind is DateKind.Form or DateKind.Address)];
        if (house.Length > 0)
        {
            foreach (var words in dating.Statements.Where(statement => statement.Kind == DateKind.Wording).OrderByDescending(statement => statement.Interval.From).Take(1))
            {
                yield return Fit("wording", words, house, "fits");
            }

            DateStatement[] made = [.. dating.Statements.Where(statement => statement.Kind == DateKind.Construction)];
            var outside = made.FirstOrDefault(statement => house.Any(other => other.Interval.Intersect(statement.Interval) is null));
            if (made.Length > 0)
            {
                yield return Fit("construction", outside ?? made[0], house, "fits");
            }
        }

        if (second is not null)
        {
            var other = dating.Statements.FirstOrDefault(statement => statement.Kind == DateKind.SecondName);
            var isApart = other is not null && form is not null && other.Interval.Intersect(form.Interval) is null;
            yield return (
                $"The piece names two houses; the other is {second.Nearest.Form.Maker}, {Spelt(second)}. Both were compared; which of them made it, and which sold it, the lettering does not tell.",
                EvidenceTables.Weight("names", isApart ? "two-apart" : "two-together"));
        }
    }

    private static (string, FeatureWeight) Fit(string feature, DateStatement statement, DateStatement[] others, string fits)
    {
        var apart = others.FirstOrDefault(other => other.Interval.Intersect(statement.Interval) is null);
        return apart is null
            ? ($"{Capital(statement.What)} ({statement.Interval}) {(AreWords(statement) ? "fit" : "fits")} the years of the house{(others.Length == 0 ? " as far as they are listed" : string.Empty)}.", EvidenceTables.Weight(feature, fits))
            : ($"{Capital(statement.What)} ({statement.Interval}) {(AreWords(statement) ? "do" : "does")} not fit {apart.What} ({apart.Interval}).", EvidenceTables.Weight(feature, "apart"));
    }

    private static bool AreWords(DateStatement statement) => statement.Kind == DateKind.Wording;

    private static string Spelt(SecondName second) => second.IsSpeltAsListed
        ? $"spelt as '{second.Nearest.Form.Form}' in the list"
        : $"near to '{second.Nearest.Form.Form}' in the list ({string.Join(", ", second.Nearest.SpellingDifferences.Select(Differs).DefaultIfEmpty("no letter differs for certain"))})";

    private static string Differs(LetterDifference place) => string.Create(
        CultureInfo.InvariantCulture,
        $"{Named(place.Read)} for {Named(place.Attested)}, the picture {Math.Pow(10, Math.Abs(place.Log10Ratio)):0.#} times more probable with {Named(place.Log10Ratio > 0 ? place.Attested : place.Rival)}");

    private static string Named(string letter) => letter.Length == 0 ? "no letter" : $"'{letter}'";

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
