using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Readings;

namespace InscriptionLab.Comparison;

/// <summary>
/// What a reading says of one place: how probable each letter is there, case and shape folded. Probabilities are the reader's; a letter that
/// it does not list holds at most <see cref="ComparerOptions.UnlistedShare"/> of what the list leaves over, and no more than the least listed one.
/// </summary>
internal sealed class PlaceWeights
{
    private readonly Dictionary<string, double> _listed = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _shown = new(StringComparer.Ordinal);
    private readonly Letter _letter;
    private readonly double _unlisted;
    private readonly double _floor;
    private readonly double _best;
    private readonly double _secondBest;

    internal PlaceWeights(Letter letter, ComparerOptions options)
    {
        _letter = letter;
        IsUnreadable = letter.Character == Letter.Unreadable;
        Fold = LetterFold.Of(letter.Character);
        IsPunctuation = !IsUnreadable && LetterFold.IsPunctuation(letter.Character);
        _floor = Math.Pow(10, -options.MaximumLog10Ratio);
        if (!IsUnreadable)
        {
            Add(letter.Character, letter.Probability.Value);
        }

        LetterCandidate[] alternatives = letter.Alternatives.IsDefault ? [] : [.. letter.Alternatives.Where(alternative => alternative.Character != letter.Character)];
        foreach (var alternative in alternatives)
        {
            Add(alternative.Character, alternative.Probability.Value);
        }

        var leftOver = Math.Max(0, 1 - _listed.Values.Sum()) * options.UnlistedShare;
        var least = alternatives.Length == 0 ? 1 : alternatives.Min(alternative => alternative.Probability.Value);
        _unlisted = Math.Min(leftOver, least);
        var ranked = _listed.OrderByDescending(pair => pair.Value).ThenBy(pair => pair.Key, StringComparer.Ordinal).ToArray();
        (_best, Best) = ranked.Length > 0 ? (ranked[0].Value, ranked[0].Key) : (Math.Max(letter.Probability.Value, _unlisted), Letter.Unreadable);
        (_secondBest, Second) = ranked.Length > 1 && ranked[1].Value >= _unlisted ? (ranked[1].Value, ranked[1].Key) : (_unlisted, Letter.Unreadable);
    }

    /// <summary>Gets the folded letter as read; "?" where it cannot be read.</summary>
    internal string Fold { get; }

    internal bool IsUnreadable { get; }

    internal bool IsPunctuation { get; }

    internal bool IsSpace => Fold == LetterFold.Space;

    /// <summary>Gets the most probable letter, folded.</summary>
    internal string Best { get; }

    /// <summary>Gets the second most probable letter, folded; "?" where none is listed.</summary>
    internal string Second { get; }

    /// <summary>Gets the doubt in the letter read: what its probability, all cases and shapes together, lacks to 1.</summary>
    internal double Doubt => 1 - Probability(Fold);

    /// <summary>Gets the listed letters that are at least so probable; folded, one or two letters, or none.</summary>
    internal IEnumerable<string> Likely(double least) => _listed.Where(pair => pair.Value >= least).Select(pair => pair.Key);

    /// <summary>Gives the probability of a letter (folded).</summary>
    internal double Probability(string fold) => Math.Clamp(_listed.GetValueOrDefault(fold, _unlisted), 0, 1);

    /// <summary>Tells whether the reader lists a letter (folded).</summary>
    internal bool Lists(string fold) => _listed.ContainsKey(fold);

    /// <summary>Gives the strongest rival of a letter (folded): the most probable other one.</summary>
    internal string Rival(string fold) => fold == Best ? Second : Best;

    /// <summary>Gives a folded letter in the case and shape in which the reader lists it; as it is where it is not listed.</summary>
    internal string Shown(string fold) => _shown.GetValueOrDefault(fold, fold);

    /// <summary>Gives P(picture | this letter) over P(picture | its strongest rival), the reader's probabilities taken as likelihoods; bounded on both sides.</summary>
    internal double Ratio(string fold)
    {
        var rival = fold == Best ? _secondBest : _best;
        var own = Probability(fold);
        return rival <= 0 && own <= 0 ? 1 : Math.Clamp(rival <= 0 ? double.PositiveInfinity : own / rival, _floor, 1 / _floor);
    }

    /// <summary>Gives P(picture | this letter in this case and shape) over P(picture | the letter as read); bounded on both sides.</summary>
    internal double ExactRatio(string character)
    {
        var own = _letter.Alternatives.IsDefault ? null : _letter.Alternatives.FirstOrDefault(alternative => alternative.Character == character);
        var read = _letter.Probability.Value;
        return read <= 0 ? 1 : Math.Clamp((own?.Probability.Value ?? _unlisted) / read, _floor, 1 / _floor);
    }

    private void Add(string character, double probability)
    {
        var fold = string.Concat(Graphemes.Of(character).Select(LetterFold.Of));
        _shown.TryAdd(fold, character);
        _listed[fold] = _listed.GetValueOrDefault(fold) + probability;
    }
}
