using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using InscriptionLab.Findings;
using InscriptionLab.Readings;
using InscriptionLab.References;

namespace InscriptionLab.Evidence;

/// <summary>Style, layout, direction, place and a year in the mark, each beside what the list has for the house.</summary>
/// <param name="reading">The reading.</param>
/// <param name="finding">The finding; it names a house.</param>
/// <param name="rows">Attested rows of the house.</param>
/// <param name="known">What is known beside the reading.</param>
/// <param name="options">Bounds.</param>
internal sealed class LetteringEvidence(Reading reading, Finding finding, ReferenceForm[] rows, Circumstances known, EvidenceOptions options)
{
    internal IEnumerable<(string Statement, FeatureWeight Weight)> All() => [.. Style(), .. Layout(), .. Direction(), .. Position(), .. Year()];

    private IEnumerable<(string, FeatureWeight)> Style()
    {
        string[] attested = [.. rows.Select(form => form.Style).OfType<string>().Distinct()];
        return attested.Length == 0 || reading.Style is not [var style, ..] || style.Probability.Value < options.KnownStyle
            ? []
            : [Seen("style", attested.Contains(style.Style), $"The lettering is {style.Style}; the list has {string.Join(" and ", attested)} for the house.")];
    }

    private IEnumerable<(string, FeatureWeight)> Layout()
    {
        FormLayout[] attested = [.. rows.Select(form => form.Layout).OfType<FormLayout>().Distinct()];
        if (attested.Length == 0 || finding.Leading?.Span is not { } span || reading.Lines.Any(line => line.Letters.Any(letter => letter.Character == Letter.Unreadable)))
        {
            return [];
        }

        var seen = span.FirstLine != span.LastLine ? FormLayout.SeveralLines
            : reading.Lines.Count(line => line.Letters.Any(letter => !letter.IsSpace)) > 1 ? FormLayout.NameOverPlace
            : FormLayout.OneLine;
        return [Seen("layout", attested.Contains(seen), $"The words stand as {Word(ReferenceField.Layouts, seen)}; the list has {string.Join(" and ", attested.Select(layout => Word(ReferenceField.Layouts, layout)))} for the house.")];
    }

    /// <summary>A photo tells round from along; at which end the eyepiece is, only a person's record tells.</summary>
    private IEnumerable<(string, FeatureWeight)> Direction()
    {
        SignatureDirection[] attested = [.. rows.Select(form => form.SignatureDirection).OfType<SignatureDirection>().Distinct()];
        if (attested.Length == 0)
        {
            return [];
        }

        var list = string.Join(" and ", attested.Select(direction => Word(ReferenceField.Directions, direction)));
        return (known.Construction?.Direction, known.RunsAround) switch
        {
            ({ } recorded, _) => [Seen("direction", attested.Contains(recorded), $"The signature runs {Word(ReferenceField.Directions, recorded)}; the list has {list} for the house.")],
            (null, { } around) => [Seen("direction", attested.Any(direction => (direction == SignatureDirection.Around) == around), $"The lettering runs {(around ? "round" : "along")} the tube; the list has {list} for the house.")],
            _ => [],
        };
    }

    private IEnumerable<(string, FeatureWeight)> Position()
    {
        string[] attested = [.. rows.Select(form => form.SignaturePosition).OfType<string>().Distinct()];
        return attested.Length == 0 || known.Construction?.Position is not { } position
            ? []
            : [Seen("position", attested.Contains(position, StringComparer.OrdinalIgnoreCase), $"The signature is on the {position}; the list has {string.Join(" and ", attested)} for the house.")];
    }

    private IEnumerable<(string, FeatureWeight)> Year() => new WordsRead(reading, options.ReadableLetter).Years(options.FirstYear, options.LastYear)
        .Take(1)
        .Select(year => (string.Create(CultureInfo.InvariantCulture, $"A number that looks like a year, {year}, is part of the mark."), EvidenceTables.Weight("year", "cut")));

    private static (string, FeatureWeight) Seen(string feature, bool asAttested, string statement) => (statement, EvidenceTables.Weight(feature, asAttested ? "as-attested" : "other"));

    private static string Word<T>(IEnumerable<(string Word, T Value)> words, T value) => words.First(known => Equals(known.Value, value)).Word;
}
