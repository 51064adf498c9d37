using System;
using System.Collections.Immutable;
using System.Linq;
using System.Numerics;
using InscriptionLab.References;

namespace InscriptionLab.Comparison;

/// <summary>
/// The forms of a list sorted by their letters, so that forms which begin alike are looked at together, and the least number of letters in which each differs
/// from any part of a window (bit-parallel optimal string alignment: G. Myers, J. ACM 46 (1999) 395-415; H. Hyyrö, Nordic J. Computing 10 (2003) 29-39).
/// </summary>
internal sealed class FormIndex
{
    /// <summary>Forms with more letters than this are taken to differ in none: they are laid over every window.</summary>
    private const int MostLetters = 250;

    private const int WordsOfPairs = 4;
    private const int PairsOfASwap = 3;

    private readonly ushort[] _letters;
    private readonly int[] _starts;
    private readonly byte[] _sharedWithPrevious;
    private readonly ulong[] _present;
    private readonly ulong[] _pairs;
    private readonly ushort[] _letterCounts;
    private readonly ushort[] _words;

    internal FormIndex(ReferenceList references)
    {
        ImmutableArray<IndexedForm> forms = [.. references.Forms.DistinctBy(form => (form.Form, form.Maker, form.Status)).Select((form, order) => new IndexedForm(form, order, Alphabet)).Where(form => form.LetterCount > 0)];
        var bare = forms.Select(Bare).ToArray();
        var sorted = Enumerable.Range(0, forms.Length).ToArray();
        Array.Sort(sorted, (first, second) => bare[first].AsSpan().SequenceCompareTo(bare[second]) is not 0 and var order ? order : first - second);
        Forms = [.. sorted.Select(form => forms[form])];
        _letters = [.. sorted.SelectMany(form => bare[form])];
        _present = [.. sorted.Select(form => bare[form].Aggregate(0UL, (letters, number) => letters | Bit(number)))];
        _pairs = [.. sorted.SelectMany(form => PairsOf(bare[form]))];
        _letterCounts = [.. Forms.Select(form => (ushort)Math.Min(ushort.MaxValue, form.LetterCount))];
        _words = [.. Forms.Select(form => (ushort)Math.Min(ushort.MaxValue, form.Words))];
        _starts = new int[Forms.Length + 1];
        _sharedWithPrevious = new byte[Forms.Length];
        for (var form = 0; form < Forms.Length; form++)
        {
            _starts[form + 1] = _starts[form] + bare[sorted[form]].Length;
            _sharedWithPrevious[form] = form == 0 ? (byte)0 : (byte)Math.Min(MostLetters, bare[sorted[form - 1]].AsSpan().CommonPrefixLength(bare[sorted[form]]));
        }
    }

    internal FoldAlphabet Alphabet { get; } = new();

    /// <summary>Gets the forms that have letters, sorted by them.</summary>
    internal ImmutableArray<IndexedForm> Forms { get; }

    /// <summary>Gets the number of letters of each form.</summary>
    internal ReadOnlySpan<ushort> LetterCounts => _letterCounts;

    /// <summary>Gets the number of words of each form.</summary>
    internal ReadOnlySpan<ushort> Words => _words;

    /// <summary>
    /// Gives for each form a number of letters in which it differs at least from any part of a window: those of its letters that stand at no place, each counted once,
    /// or a third of its pairs of neighbours that stand at no two places, since a letter replaced parts two pairs and two letters swapped part three.
    /// </summary>
    /// <param name="places">For each number of the alphabet, the places of the window (bits) that it may stand at.</param>
    /// <param name="edits">One number for each form.</param>
    internal void FewestEdits(ulong[] places, Span<byte> edits)
    {
        int[] there = [.. Enumerable.Range(0, places.Length).Where(number => places[number] != 0)];
        var absent = ~there.Aggregate(0UL, (letters, number) => letters | Bit(number));
        var pairs = new ulong[WordsOfPairs];
        foreach (var first in there)
        {
            foreach (var second in there.Where(second => ((places[first] << 1) & places[second]) != 0))
            {
                AddPair(pairs, first, second);
            }
        }

        var apart = pairs.Select(word => ~word).ToArray();
        for (var form = 0; form < edits.Length; form++)
        {
            var of = _pairs.AsSpan(form * WordsOfPairs, WordsOfPairs);
            var parted = BitOperations.PopCount(of[0] & apart[0]) + BitOperations.PopCount(of[1] & apart[1]) + BitOperations.PopCount(of[2] & apart[2]) + BitOperations.PopCount(of[3] & apart[3]);
            edits[form] = (byte)Math.Max(BitOperations.PopCount(_present[form] & absent), (parted + PairsOfASwap - 1) / PairsOfASwap);
        }
    }

    /// <summary>
    /// Gives the least number of letters replaced, missing, too many or swapped by which forms differ from some part of a window, spaces and punctuation left out.
    /// A letter that the window has at no place differs everywhere.
    /// </summary>
    /// <param name="places">For each number of the alphabet, the places of the window (bits) that it may stand at.</param>
    /// <param name="forms">The forms that are asked about, rising.</param>
    /// <param name="edits">One number for each form of the list; only those asked about are written.</param>
    internal void LeastEdits(ulong[] places, ReadOnlySpan<int> forms, Span<byte> edits)
    {
        // The state after each letter: which differences down the window are +1 and -1, which cells equal their upper left neighbours, and the letter's places.
        Span<ulong> plus = stackalloc ulong[MostLetters + 1];
        Span<ulong> minus = stackalloc ulong[MostLetters + 1];
        Span<ulong> equal = stackalloc ulong[MostLetters + 1];
        Span<ulong> here = stackalloc ulong[MostLetters + 1];
        (plus[0], minus[0], equal[0], here[0]) = (0, 0, 0, 0);
        var (known, last) = (0, -1);
        foreach (var form in forms)
        {
            var letters = _letters.AsSpan(_starts[form].._starts[form + 1]);
            if (letters.Length > MostLetters)
            {
                (edits[form], known) = (0, 0);
                continue;
            }

            for (var between = last + 1; between <= form && known > 0; between++)
            {
                known = Math.Min(known, _sharedWithPrevious[between]);
            }

            for (var at = known; at < letters.Length; at++)
            {
                var match = places[letters[at]];
                var swap = ((~equal[at] & match) << 1) & here[at];
                var same = (((match & plus[at]) + plus[at]) ^ plus[at]) | match | minus[at] | swap;
                var right = ((minus[at] | ~(same | plus[at])) << 1) | 1;
                var left = (same & plus[at]) << 1;
                (plus[at + 1], minus[at + 1], equal[at + 1], here[at + 1]) = (left | ~(same | right), right & same, same, match);
            }

            (known, last) = (letters.Length, form);
            edits[form] = (byte)Least(letters.Length, plus[known], minus[known]);
        }
    }

    /// <summary>The least number of the last column: it stands at its top or below a step down.</summary>
    private static int Least(int top, ulong plus, ulong minus)
    {
        var least = top;
        for (var rest = minus; rest != 0; rest &= rest - 1)
        {
            var upTo = rest ^ (rest - 1);
            least = Math.Min(least, top + BitOperations.PopCount(plus & upTo) - BitOperations.PopCount(minus & upTo));
        }

        return least;
    }

    private static ulong Bit(int number) => 1UL << (number % 64);

    /// <summary>Pairs of neighbours as bits; pairs that fall on one bit count once, so that less is claimed and never more.</summary>
    private static ulong[] PairsOf(ushort[] letters)
    {
        var pairs = new ulong[WordsOfPairs];
        for (var at = 1; at < letters.Length; at++)
        {
            AddPair(pairs, letters[at - 1], letters[at]);
        }

        return pairs;
    }

    private static void AddPair(ulong[] pairs, int first, int second)
    {
        const int Spread = 37;
        var bit = ((first * Spread) + second) % (64 * WordsOfPairs);
        pairs[bit / 64] |= 1UL << (bit % 64);
    }

    private static ushort[] Bare(IndexedForm form) => [.. form.Numbers.Where((_, index) => form.Letters[index] != LetterFold.Space && !form.IsPunctuation[index])];
}
