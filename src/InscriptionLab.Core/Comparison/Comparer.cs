using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading.Tasks;
using InscriptionLab.Readings;
using InscriptionLab.References;

namespace InscriptionLab.Comparison;

/// <summary>
/// Lays the forms of a reference list beside a finished reading. The reading is never changed: it goes into the result as the same object,
/// whatever the list.
/// </summary>
public sealed class Comparer
{
    private const int DigitsOfStanding = 9;

    private readonly ReferenceList _references;
    private readonly ComparerOptions _options;
    private readonly FormIndex _index;

    /// <summary>Makes a comparer; the list is indexed once, for many readings.</summary>
    /// <param name="references">The list; may be empty.</param>
    /// <param name="options">Costs and bounds; null for the defaults.</param>
    /// <exception cref="ArgumentOutOfRangeException">An option is outside its range.</exception>
    public Comparer(ReferenceList references, ComparerOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(references);
        _references = references;
        _options = options ?? new ComparerOptions();
        _options.Validate();
        _index = new FormIndex(references, _options);
    }

    /// <summary>Gives the forms nearest to a reading with every difference, letter by letter.</summary>
    /// <param name="reading">The finished reading.</param>
    public ReadingComparison Compare(Reading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        LetterWindow[] windows = [.. LetterWindow.Of(reading, _options)];
        var laid = new Alignment[windows.Length][];

        // Each window by itself, on whatever processors are free; put together in reading order, so that the result is the same on any number of them.
        Parallel.For(0, windows.Length, index => laid[index] = Lay(windows[index]));
        var best = new Dictionary<int, NearestForm>();
        foreach (var alignment in laid.SelectMany(alignments => alignments))
        {
            Keep(best, alignment);
        }

        return new ReadingComparison(reading, _references, new PictureEvidence(reading, _options).Weigh([.. Ranked(best).Take(_options.MaximumNearest)]));
    }

    private Alignment[] Lay(LetterWindow window) =>
        [.. _index.Propose(window).Select(form => Aligner.Align(window, form, _options)).OfType<Alignment>().Where(alignment => alignment.IsWhole)];

    private void Keep(Dictionary<int, NearestForm> best, Alignment alignment)
    {
        if (best.TryGetValue(alignment.Form.Order, out var kept) && kept.Distance <= alignment.Cost)
        {
            return;
        }

        var found = new DifferenceFinder(alignment, _options).Find();
        if (kept is null || found.Distance < kept.Distance)
        {
            best[alignment.Form.Order] = found;
        }
    }

    private IEnumerable<NearestForm> Ranked(Dictionary<int, NearestForm> best) => best
        .OrderByDescending(found => Math.Round(found.Value.Letters - (_options.LettersPerDifference * found.Value.Distance), DigitsOfStanding))
        .ThenBy(found => Math.Round(found.Value.Distance, DigitsOfStanding))
        .ThenBy(found => found.Value.IsOtherCase)
        .ThenBy(found => found.Value.Form.Status)
        .ThenBy(found => found.Key)
        .Select(found => found.Value);
}
