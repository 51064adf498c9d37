using System;
using System.Linq;
using InscriptionLab.Comparison;
using Xunit;

namespace InscriptionLab.Core.Tests.Comparison;

/// <summary>The search by letter pairs against the slow way that lays every form over every line. All names are drawn from syllables.</summary>
public sealed class LongListTests
{
    private const int Forms = 800;
    private const int Queries = 60;

    private static readonly string[] Onsets = "b br c cr d dr f fr g gr h k l m n p pr r s st t th tr v w".Split(' ');
    private static readonly string[] Nuclei = "a e i o u ai ea ou ow".Split(' ');
    private static readonly string[] Codas = "ck d ll n nd rn ss st t th x m sh ld".Split(' ');
    private static readonly string[] Endings = "by ham ridge well worth lane more wick grave".Split(' ');

    [Fact]
    public void The_search_finds_what_laying_every_form_over_the_line_finds()
    {
        var random = new Random(20261125);
        var forms = Enumerable.Range(0, Forms).Select(_ => Form(random)).Distinct().ToArray();
        var list = Fabricated.List(forms);
        var quick = new Comparer(list);
        var slow = new Comparer(list, new ComparerOptions { ProposedForms = forms.Length, AlignedForms = forms.Length });

        var same = 0;
        for (var query = 0; query < Queries; query++)
        {
            var form = forms[random.Next(forms.Length)];
            var read = Edited(query % 2 == 0 ? form : Edited(form, random), random) + (query % 3 == 0 ? " LONDON" : string.Empty);
            var reading = Fabricated.Reading(read);
            var (found, best) = (quick.Compare(reading).Nearest[0], slow.Compare(reading).Nearest[0]);
            same += found.Form == best.Form || Math.Abs(found.Distance - best.Distance) < 1e-9 ? 1 : 0;
        }

        Assert.Equal(Queries, same);
    }

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
