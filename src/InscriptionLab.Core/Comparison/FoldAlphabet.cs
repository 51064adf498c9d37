using System;
using System.Collections.Generic;

namespace InscriptionLab.Comparison;

/// <summary>The folded letters of all forms of a list, numbered in the order in which they were met; each string is kept once.</summary>
internal sealed class FoldAlphabet
{
    private readonly Dictionary<string, (string Letter, string Fold)> _letters = new(StringComparer.Ordinal);
    private readonly Dictionary<string, ushort> _numbers = new(StringComparer.Ordinal);
    private readonly List<string> _folds = [];

    internal int Count => _folds.Count;

    internal string this[int number] => _folds[number];

    /// <summary>Gives a letter and its fold as the one string that all forms share.</summary>
    internal (string Letter, string Fold) Shared(string letter)
    {
        if (!_letters.TryGetValue(letter, out var known))
        {
            known = (letter, LetterFold.Of(letter));
            _letters.Add(letter, known);
        }

        return known;
    }

    /// <summary>Gives the number of a folded letter, a new one where it was not met before.</summary>
    internal ushort NumberOf(string fold)
    {
        if (!_numbers.TryGetValue(fold, out var number))
        {
            number = checked((ushort)_folds.Count);
            _numbers.Add(fold, number);
            _folds.Add(fold);
        }

        return number;
    }
}
