using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Threading.Tasks;

namespace InscriptionLab.Comparison;

/// <summary>
/// Finds the forms nearest to the windows of a reading, best first: forms are laid over windows in the order of the best standing that they can still reach, until
/// none can reach the last place among the nearest. What is left out cannot be among them, so that the result is that of laying every form over every window.
/// A form is laid only over words with which it shares two neighbouring letters, and over several lines only where it has as many words.
/// </summary>
internal sealed class NearestSearch(FormIndex index, ImmutableArray<LetterWindow> windows, ComparerOptions options)
{
    /// <summary>Pairs of window and form that are looked at, and laid, before anything is known of the standing to be reached.</summary>
    private const int FirstLooked = 400;

    private const int FirstLaid = 40;
    private const int FormsOfOneRun = 4096;
    private const int MostEdits = byte.MaxValue;
    private const double Dust = 1e-6;

    private readonly WindowCosts[] _costs = new WindowCosts[windows.Length];
    private readonly HashSet<uint>[] _pairs = new HashSet<uint>[windows.Length];
    private readonly byte[][] _edits = new byte[windows.Length][];
    private readonly double[][] _lost = new double[windows.Length][];
    private readonly Dictionary<int, (NearestForm Form, int Window)> _best = [];
    private double _toReach = double.NegativeInfinity;

    /// <summary>Gives at least the nearest forms, each as it lies best; by their order in the list.</summary>
    internal Dictionary<int, NearestForm> Find()
    {
        // Each window and run by itself, on whatever processors are free; what is found does not depend on their number.
        Parallel.For(0, windows.Length, Prepare);
        if (options.LaysEveryForm)
        {
            for (var window = 0; window < windows.Length; window++)
            {
                foreach (var form in index.Forms.Where(form => form.Words >= windows[window].LineCount))
                {
                    Lay(window, form);
                }
            }
        }
        else
        {
            LayFirst();
            LayRest();
        }

        return _best.ToDictionary(found => found.Key, found => found.Value.Form);
    }

    /// <summary>Gives how high a form stands that is laid at a distance.</summary>
    internal static double Standing(int letters, double distance, ComparerOptions options) => letters - (options.LettersPerDifference * distance);

    private void Prepare(int window)
    {
        var costs = new WindowCosts(windows[window], index.Alphabet, options);
        (_costs[window], _pairs[window]) = (costs, PairsOf(windows[window]));
        _edits[window] = new byte[index.Forms.Length];
        _lost[window] = [.. Enumerable.Range(0, MostEdits + 1).Select(edits => options.LettersPerDifference * costs.AtLeast(edits))];
        index.FewestEdits(costs.PlacesOf, _edits[window]);
    }

    /// <summary>Gives a standing that some pairs of window and form may reach, but not many.</summary>
    private double FirstStanding()
    {
        var count = new int[2 * MostEdits];
        foreach (var window in SingleLines())
        {
            var letters = index.LetterCounts;
            for (var form = 0; form < letters.Length; form++)
            {
                count[Math.Clamp((int)Math.Floor(letters[form] - _lost[window][_edits[window][form]]) + MostEdits, 0, count.Length - 1)]++;
            }
        }

        var sum = 0;
        for (var standing = count.Length - 1; standing > 0; standing--)
        {
            sum += count[standing];
            if (sum >= FirstLooked)
            {
                return standing - MostEdits;
            }
        }

        return double.NegativeInfinity;
    }

    /// <summary>Gives the best standing that a form can have over a window.</summary>
    private double Bound(int window, int form) => index.LetterCounts[form] - _lost[window][_edits[window][form]];

    /// <summary>Gives the forms that can reach a standing over a window; a form runs over several lines only between its words.</summary>
    private List<int> Within(int window, double from)
    {
        var within = new List<int>();
        var letters = index.LetterCounts;
        var words = index.Words;
        var (edits, lost) = (_edits[window], _lost[window]);
        for (var form = 0; form < edits.Length; form++)
        {
            if (letters[form] - lost[edits[form]] >= from - Dust && words[form] >= _costs[window].FewestWords)
            {
                within.Add(form);
            }
        }

        return within;
    }

    /// <summary>Lays the forms that look nearest to single lines, so that a standing is known that the others must reach.</summary>
    private void LayFirst()
    {
        var from = FirstStanding();
        var looked = SingleLines().Select(window => (Window: window, Forms: Within(window, from).ToArray())).ToArray();
        Parallel.For(0, looked.Length, run => index.LeastEdits(_costs[looked[run].Window].PlacesOf, looked[run].Forms, _edits[looked[run].Window]));
        foreach (var (_, window, form) in looked.SelectMany(run => run.Forms.Select(form => (Bound(run.Window, form), run.Window, form))).OrderDescending().Take(FirstLaid))
        {
            Lay(window, index.Forms[form]);
        }
    }

    /// <summary>Lays every pair of window and form that can reach that standing, those first that can stand highest.</summary>
    private void LayRest()
    {
        var looked = Enumerable.Range(0, windows.Length).SelectMany(window => Within(window, _toReach).Chunk(FormsOfOneRun).Select(forms => (Window: window, Forms: forms))).ToArray();
        var near = new List<(double Standing, int Window, int Form)>[looked.Length];
        Parallel.For(0, looked.Length, run => near[run] = Near(looked[run].Window, looked[run].Forms));
        foreach (var (standing, window, form) in near.SelectMany(found => found).OrderDescending())
        {
            if (standing < _toReach - Dust)
            {
                return;
            }

            Lay(window, index.Forms[form]);
        }
    }

    private IEnumerable<int> SingleLines() => Enumerable.Range(0, windows.Length).Where(window => windows[window].LineCount == 1);

    private List<(double Standing, int Window, int Form)> Near(int window, int[] forms)
    {
        var near = new List<(double Standing, int Window, int Form)>();
        index.LeastEdits(_costs[window].PlacesOf, forms, _edits[window]);
        foreach (var form in forms)
        {
            var limit = Limit(index.LetterCounts[form]);
            if (Bound(window, form) >= _toReach - Dust && _costs[window].Cheapest(index.Forms[form], limit) is var cost && cost <= limit)
            {
                near.Add((Standing(index.LetterCounts[form], cost, options), window, form));
            }
        }

        return near;
    }

    /// <summary>Gives the distance at which a form can still reach the last place among the nearest.</summary>
    private double Limit(int letters) => ((letters - _toReach) / options.LettersPerDifference) + Dust;

    private void Lay(int window, IndexedForm form)
    {
        if (!SearchKey.Pairs(form.Key).Overlaps(_pairs[window])
            || Aligner.Align(windows[window], form, options) is not { IsWhole: true } alignment
            || (_best.TryGetValue(form.Order, out var kept) && kept.Form.Distance < alignment.Cost))
        {
            return;
        }

        var found = new DifferenceFinder(alignment, options).Find();
        if (kept.Form is not null && (kept.Form.Distance, kept.Window).CompareTo((found.Distance, window)) <= 0)
        {
            return;
        }

        _best[form.Order] = (found, window);
        if (!options.LaysEveryForm && _best.Count >= options.MaximumNearest && Standing(found.Letters, found.Distance, options) > _toReach)
        {
            _toReach = _best.Values.Select(best => Standing(best.Form.Letters, best.Form.Distance, options)).OrderDescending().ElementAt(options.MaximumNearest - 1);
        }
    }

    private HashSet<uint> PairsOf(LetterWindow window)
    {
        var pairs = new HashSet<uint>();
        IReadOnlyList<string> previous = [LetterFold.Space];
        foreach (var place in window.Places.Where(place => !place.IsPunctuation))
        {
            IReadOnlyList<string> here = place.Weights is { } weights ? [weights.Fold, .. weights.Likely(options.AlternativeFloor).Where(fold => fold.Length > 0)] : [LetterFold.Space];
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
}
