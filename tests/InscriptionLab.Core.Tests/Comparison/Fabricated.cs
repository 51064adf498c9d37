using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.References;
using InscriptionLab.Strips;

namespace InscriptionLab.Core.Tests.Comparison;

/// <summary>Readings and lists made by hand, letter by letter.</summary>
internal static class Fabricated
{
    /// <summary>What a sure reader says of a letter.</summary>
    internal const double Sure = 0.999;

    internal static Reading Reading(params string[] lines) => Of([.. lines.Select(line => Line(line))]);

    internal static Reading Of(params LineReading[] lines) => new("fabricated", [.. lines], []);

    internal static LineReading Line(string text, double probability = Sure, LinePosteriors? posteriors = null) =>
        Line([.. Clusters(text).Select(letter => Letter(letter, probability))], posteriors);

    internal static LineReading Line(ImmutableArray<Letter> letters, LinePosteriors? posteriors = null)
    {
        var line = new LetteringLine(new GrayImage(1, 1, [0]), new FlatStripMap(1), default, default, new LineDirection(default, false, false), PixelLength.FromPixels(40), Probability.One);
        return new LineReading(line, letters, Probability.From(letters.Aggregate(1.0, (product, letter) => product * letter.Probability.Value)), posteriors);
    }

    internal static Letter Letter(string character, double probability, params (string Character, double Probability)[] alternatives) => new(
        character,
        Probability.From(probability),
        [.. alternatives.Select(alternative => new LetterCandidate(alternative.Character, Probability.From(alternative.Probability)))],
        default,
        default);

    /// <summary>Gives the line with one letter's probabilities replaced.</summary>
    internal static LineReading With(this LineReading line, int index, double probability, params (string Character, double Probability)[] alternatives) =>
        line with { Letters = line.Letters.SetItem(index, Letter(line.Letters[index].Character, probability, alternatives)) };

    internal static ReferenceList List(params string[] attested) =>
        new("fabricated", string.Empty, [.. attested.Select(form => new ReferenceForm(form, form, AttestationStatus.Attested))]);

    internal static ReferenceList Plus(this ReferenceList list, string form, AttestationStatus status) =>
        list with { Forms = list.Forms.Add(new ReferenceForm(form, form, status)) };

    internal static ImmutableArray<string> Clusters(string text)
    {
        var clusters = ImmutableArray.CreateBuilder<string>();
        for (var walk = StringInfo.GetTextElementEnumerator(text); walk.MoveNext();)
        {
            clusters.Add(walk.GetTextElement());
        }

        return clusters.ToImmutable();
    }
}
