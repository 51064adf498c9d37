using System;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Readings;
using Xunit;

namespace InscriptionLab.Core.Tests.Comparison;

/// <summary>The search against the slow way that lays every form over every line, sure readings and doubtful ones. All names are drawn from syllables.</summary>
public sealed class LongListTests
{
    private const int Forms = 400;
    private const int Queries = 20;

    private static readonly string[] Onsets = "b br c cr d dr f fr g gr h k l m n p pr r s st t th tr v w".Split(' ');
    private static readonly string[] Nuclei = "a e i o u ai ea ou ow".Split(' ');
    private static readonly string[] Codas = "ck d ll n nd rn ss st t th x m sh ld".Split(' ');
    private static readonly string[] Endings = "by ham ridge well worth lane more wick grave".Split(' ');

    [Theory]
    [InlineData(20261125)]
    [InlineData(20261126)]
    public void The_search_finds_exactly_what_laying_every_form_over_every_line_finds(int seed)
    {
        var random = new Random(seed);
        var forms = Enumerable.Range(0, Forms).Select(_ => Form(random)).Distinct().ToArray();
        var list = Fabricated.List(forms);
        var quick = new Comparer(list);
        var slow = new Comparer(list, new ComparerOptions { LaysEveryForm = true });
        for (var query = 0; query < Queries; query++)
        {
            var form = forms[random.Next(forms.Length)];
            var read = Edited(query % 2 == 0 ? form : Edited(form, random), random) + (query % 3 == 0 ? " LONDON" : string.Empty);
            string[] lines = (query % 4) switch
            {
                1 => [read, forms[random.Next(forms.Length)], "BRACKHAVEN"],
                2 when read.Contains(' ', StringComparison.Ordinal) => read.Split(' '),
                3 => [string.Join(' ', Enumerable.Range(0, 6).Select(_ => forms[random.Next(forms.Length)]))],
                _ => [read],
            };
            var reading = Fabricated.Of([.. lines.Select(line => Doubted(line, query % 6, random))]);

            Assert.Equal(Told(slow.Compare(reading)), Told(quick.Compare(reading)));
        }
    }

    private static string[] Told(ReadingComparison comparison) => [.. comparison.Nearest.Select(nearest => FormattableString.Invariant($"{nearest.Form.Form} {nearest.Distance:0.000000} {nearest.Span}"))];

    /// <summary>A line whose letters are doubted more or less: other letters in their place, two letters, a stop, none; some cannot be read, with or without a guess.</summary>
    private static LineReading Doubted(string text, int doubt, Random random) => Fabricated.Line([.. Fabricated.Clusters(text).Select(letter =>
    {
        if (doubt == 0 || random.Next(4) > 0)
        {
            return Fabricated.Letter(letter, 0.999);
        }

        var probability = 1 - (random.NextDouble() * Math.Min(4, doubt) / 5);
        string[] others = [((char)('a' + random.Next(26))).ToString(), string.Empty, letter + One(Codas, random)[..1], "rn", ".", " "];
        var other = others[random.Next(others.Length)];
        if (doubt == 5)
        {
            (string, double)[] guesses = random.Next(3) switch { 0 => [], 1 => [(other, probability / 2)], _ => [(letter, probability / 2), (other, probability / 3)] };
            return Fabricated.Letter(Letter.Unreadable, probability / 2, guesses);
        }

        return doubt == 4 && random.Next(6) == 0
            ? Fabricated.Letter(Letter.Unreadable, probability / 2, (letter, probability / 2))
            : Fabricated.Letter(letter, probability, (other, (1 - probability) * random.NextDouble()));
    })]);

    private static string Form(Random random)
    {
        var name = string.Concat(Enumerable.Range(0, random.Next(1, 3)).Select(_ => One(Onsets, random) + One(Nuclei, random) + One(Codas, random))) + (random.Next(2) == 0 ? One(Endings, random) : string.Empty);
        var capitalised = char.ToUpperInvariant(name[0]) + name[1..];
        return random.Next(5) switch
        {
            0 => "Thos. " + capitalised,
            1 => capitalised + " & Son",
            2 => capitalised.ToUpperInvariant(),
            _ => capitalised,
        };
    }

    /// <summary>One letter replaced, put in, left out or swapped with the next.</summary>
    private static string Edited(string text, Random random)
    {
        var index = random.Next(1, text.Length - 1);
        var letter = (char)('a' + random.Next(26));
        return random.Next(4) switch
        {
            0 => text[..index] + letter + text[(index + 1)..],
            1 => text.Insert(index, letter.ToString()),
            2 => text.Remove(index, 1),
            _ => $"{text[..index]}{text[index + 1]}{text[index]}{text[(index + 2)..]}",
        };
    }

    private static string One(string[] parts, Random random) => parts[random.Next(parts.Length)];
}
