using System;
using System.Collections.Generic;
using System.Globalization;
using InscriptionLab.Comparison;
using InscriptionLab.Readings;

namespace InscriptionLab.Findings;

/// <summary>Sentences on single letters. Letters are counted from 1 in their line, spaces counted, so that each can be found in the photo.</summary>
internal sealed class LetterSentences(JudgeOptions options)
{
    /// <summary>Says what speaks against the form at each place; two swapped letters are one sentence.</summary>
    internal IEnumerable<string> Against(IReadOnlyList<LetterDifference> differences) => Said(differences, Against, SwappedAgainst);

    /// <summary>Says what the picture leaves open at each place.</summary>
    internal IEnumerable<string> Open(IReadOnlyList<LetterDifference> places) => Said(places, Open, SwappedOpen);

    /// <summary>Gives the strongest rival in words.</summary>
    internal string Sure(LetterDifference agreement) => string.Create(
        CultureInfo.InvariantCulture,
        $"The least certain letter is '{agreement.Read}', {Where(agreement)}: the picture is {RatioWords.Times(agreement.Log10Ratio, options.MaximumLog10Ratio)} times more probable with it than with {Named(agreement.Rival)} ({VerbalScale.For(Capped(agreement))}).");

    private static IEnumerable<string> Said(IReadOnlyList<LetterDifference> places, Func<LetterDifference, string> one, Func<LetterDifference, LetterDifference, string> swapped)
    {
        for (var index = 0; index < places.Count; index++)
        {
            if (places[index].Kind == DifferenceKind.Swapped && index + 1 < places.Count && places[index + 1].Kind == DifferenceKind.Swapped)
            {
                yield return swapped(places[index], places[index + 1]);
                index++;
            }
            else
            {
                yield return one(places[index]);
            }
        }
    }

    private string Against(LetterDifference difference) => difference switch
    {
        { Read: "" } => $"Before {Where(difference)}: the form has '{difference.Attested}', which is not cut; {Weighed(difference, "without it than with it")}.",
        { Attested: "" } => $"{Capital(Where(difference))}: '{difference.Read}' is cut, which the form does not have; {Weighed(difference, "with it than without it")}.",
        { Read: Letter.Unreadable } => $"{Capital(Where(difference))}: the form has '{difference.Attested}'; what is cut cannot be read for certain, but {Weighed(difference, $"with {Named(difference.Rival)} than with '{difference.Attested}'")}.",
        _ => $"{Capital(Where(difference))}: the form has '{difference.Attested}', cut is '{difference.Read}'; {Weighed(difference, $"with {Named(difference.Rival)} than with '{difference.Attested}'")}.",
    };

    private string SwappedAgainst(LetterDifference first, LetterDifference second) =>
        $"{Capital(Where(first, second))}: the form has '{first.Attested}{second.Attested}', cut is '{first.Read}{second.Read}'; {Weighed(first, $"with '{first.Read}{second.Read}' than with '{first.Attested}{second.Attested}'")}.";

    private string Open(LetterDifference place) => place switch
    {
        _ when FormStanding.IsBeforeLine(place) => $"Before {Where(place)}: whether '{place.Attested}' is cut there, as in the form; a first letter may lie outside the picture or outside the box round the line.",
        { IsBeyondReader: true } => $"{Capital(Where(place))}: the form has '{place.Attested}', which this reader does not know.",
        { Read: "" } => $"Before {Where(place)}: whether '{place.Attested}' is cut there, as in the form ({Balance(place)}).",
        { Attested: "" } => $"{Capital(Where(place))}: whether '{place.Read}' is cut there, which the form does not have ({Balance(place)}).",
        { Read: Letter.Unreadable } => $"{Capital(Where(place))}: cannot be read; the form has '{place.Attested}' ({Balance(place)}).",
        _ when place.Attested == place.Read || place.Log10Ratio > 0 => $"{Capital(Where(place))}: '{place.Attested}' as in the form, or {Named(place.Rival)} ({Balance(place)}).",
        _ => $"{Capital(Where(place))}: '{place.Read}' as read, or '{place.Attested}' as in the form ({Balance(place)}).",
    };

    private string SwappedOpen(LetterDifference first, LetterDifference second) =>
        $"{Capital(Where(first, second))}: '{first.Read}{second.Read}' as read, or '{first.Attested}{second.Attested}' as in the form ({Balance(first)}).";

    private string Weighed(LetterDifference difference, string comparison) =>
        $"the picture is {RatioWords.Times(difference.Log10Ratio, options.MaximumLog10Ratio)} times more probable {comparison} ({VerbalScale.For(Capped(difference))})";

    private string Balance(LetterDifference place)
    {
        var isEven = VerbalScale.For(place.Log10Ratio) == VerbalScale.Bands[0].Words;
        return isEven
            ? "the picture allows both about equally"
            : $"the picture is {RatioWords.Times(place.Log10Ratio, options.MaximumLog10Ratio)} times more probable {(place.Log10Ratio > 0 ? "as in the form" : "otherwise")}, {VerbalScale.For(Capped(place))} only";
    }

    private double Capped(LetterDifference place) => EvidenceMath.Capped(place.Log10Ratio, options.MaximumLog10Ratio);

    private static string Named(string rival) => rival switch
    {
        "" => "no letter",
        Letter.Unreadable => "any other letter",
        _ => $"'{rival}'",
    };

    private static string Where(LetterDifference place) =>
        string.Create(CultureInfo.InvariantCulture, $"letter {place.LetterIndex + 1} of line {place.LineIndex + 1}");

    private static string Where(LetterDifference first, LetterDifference second) =>
        string.Create(CultureInfo.InvariantCulture, $"letters {first.LetterIndex + 1} and {second.LetterIndex + 1} of line {first.LineIndex + 1}");

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
