using System;
using System.Buffers;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Runtime.InteropServices;
using InscriptionLab.References;

namespace InscriptionLab.Comparison;

/// <summary>Finds the forms that may lie near to a window: first by the letter pairs they share, then by plain edit distance to a run of words.</summary>
internal sealed class FormIndex
{
    private readonly ImmutableArray<IndexedForm> _forms;
    private readonly double[] _standings;
    private readonly int[] _wordCounts;
    private readonly Dictionary<uint, int[]> _formsWithPair;
    private readonly ComparerOptions _options;

    internal FormIndex(ReferenceList references, ComparerOptions options)
    {
        _options = options;
        var folds = new Dictionary<string, (string, string)>(StringComparer.Ordinal);
        _forms = [.. references.Forms.DistinctBy(form => (form.Form, form.Maker, form.Status)).Select((form, order) => new IndexedForm(form, order, folds))];
        _standings = new double[_forms.Length];
        _wordCounts = [.. _forms.Select(form => form.Words)];
        var postings = new Dictionary<uint, List<int>>();
        foreach (var form in _forms)
        {
            var pairs = SearchKey.Pairs(form.Key);
            _standings[form.Order] = form.LetterCount - (options.LettersPerDifference * pairs.Count / 2);
            foreach (var pair in pairs)
            {
                ref var list = ref CollectionsMarshal.GetValueRefOrAddDefault(postings, pair, out _);
                (list ??= []).Add(form.Order);
            }
        }

        _formsWithPair = postings.ToDictionary(posting => posting.Key, posting => posting.Value.ToArray());
    }

    /// <summary>Gives the forms worth laying over a window, most promising first.</summary>
    internal IReadOnlyList<IndexedForm> Propose(LetterWindow window)
    {
        var runs = WordRuns(window);
        return [.. ByPairs(window)
            .Select(form => (Form: form, Nearest: Nearest(form.Key, form.Words, runs)))
            .OrderByDescending(found => found.Form.LetterCount - (_options.LettersPerDifference * found.Nearest.Distance))
            .ThenByDescending(found => found.Nearest.Similarity)
            .ThenBy(found => found.Form.Order)
            .Take(_options.AlignedForms)
            .Select(found => found.Form)];
    }

    /// <summary>A letter replaced breaks two pairs, so half the pairs that are not shared stand for the distance. A form runs over several lines only between its words.</summary>
    private IndexedForm[] ByPairs(LetterWindow window)
    {
        // Rented: an array as long as the list, made for each window, would keep the collector of large objects busy.
        var rented = ArrayPool<ushort>.Shared.Rent(_forms.Length);
        try
        {
            var shared = rented.AsSpan(0, _forms.Length);
            shared.Clear();
            foreach (var pair in Pairs(window))
            {
                foreach (var order in _formsWithPair.GetValueOrDefault(pair, []))
                {
                    shared[order]++;
                }
            }

            return MostShared(shared, window.LineCount);
        }
        finally
        {
            ArrayPool<ushort>.Shared.Return(rented);
        }
    }

    private IndexedForm[] MostShared(ReadOnlySpan<ushort> shared, int fewestWords)
    {
        var best = new PriorityQueue<int, (double Standing, int Order)>();
        var worst = double.NegativeInfinity;
        var perPair = _options.LettersPerDifference / 2;
        for (var order = 0; order < shared.Length; order++)
        {
            if (shared[order] == 0)
            {
                continue;
            }

            var standing = _standings[order] + (perPair * shared[order]);
            if (_wordCounts[order] < fewestWords || standing <= worst)
            {
                continue;
            }

            best.Enqueue(order, (standing, -order));
            if (best.Count > _options.ProposedForms)
            {
                best.Dequeue();
                worst = best.TryPeek(out _, out var least) ? least.Standing : worst;
            }
        }

        return [.. best.UnorderedItems.Select(item => _forms[item.Element]).OrderBy(form => form.Order)];
    }

    private HashSet<uint> Pairs(LetterWindow window)
    {
        var pairs = new HashSet<uint>();
        IReadOnlyList<string> previous = [LetterFold.Space];
        foreach (var place in window.Places.Where(place => !place.IsPunctuation))
        {
            IReadOnlyList<string> here = place.Weights is { } weights ? [weights.Fold, .. weights.Likely(_options.AlternativeFloor).Where(fold => fold.Length > 0)] : [LetterFold.Space];
            foreach (var first in previous)
            {
                foreach (var second in here)
                {
                    pairs.Add(SearchKey.Pair(first[^1], second[0]));
                }
            }

            foreach (var two in here.Where(fold => fold.Length > 1))
            {
                pairs.Add(SearchKey.Pair(two[0], two[1]));
            }

            previous = here;
        }

        foreach (var last in previous)
        {
            pairs.Add(SearchKey.Pair(last[^1], LetterFold.Space[0]));
        }

        return pairs;
    }

    /// <summary>Runs of words from the first line of the window to its last.</summary>
    private static List<(string Text, int Words)> WordRuns(LetterWindow window)
    {
        var words = window.Places
            .Where(place => !place.IsBreak)
            .GroupBy(place => place.Line)
            .SelectMany(line => SearchKey.Of(line.Select(place => place.Weights!.Fold)).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word => (Text: word, Line: line.Key)))
            .ToArray();
        var runs = new List<(string, int)>();
        for (var first = 0; first < words.Length && words[first].Line == words[0].Line; first++)
        {
            for (var last = first; last < words.Length; last++)
            {
                if (words[last].Line == words[^1].Line)
                {
                    runs.Add((string.Join(' ', words[first..(last + 1)].Select(word => word.Text)), last - first + 1));
                }
            }
        }

        return runs;
    }

    /// <summary>The nearest run of words among those with as many words as the form, one more or one less.</summary>
    private static (int Distance, double Similarity) Nearest(string key, int words, List<(string Text, int Words)> runs)
    {
        var best = (Distance: key.Length, Similarity: 0.0);
        foreach (var (text, _) in runs.Where(run => Math.Abs(run.Words - words) <= 1))
        {
            if (Math.Abs(text.Length - key.Length) > best.Distance)
            {
                continue;
            }

            var distance = StringDistances.OptimalStringAlignment(text, key);
            if (distance <= best.Distance)
            {
                var similarity = StringDistances.JaroWinkler(text, key);
                best = distance < best.Distance || similarity > best.Similarity ? (distance, similarity) : best;
            }
        }

        return best;
    }
}
