using System;
using System.Collections.Generic;
using System.Linq;
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
        _index = new FormIndex(references);
    }

    /// <summary>Gives the forms nearest to a reading with every difference, letter by letter.</summary>
    /// <param name="reading">The finished reading.</param>
    public ReadingComparison Compare(Reading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        var best = new NearestSearch(_index, [.. LetterWindow.Of(reading, _options)], _options).Find();
        return new ReadingComparison(reading, _references, [.. new PictureEvidence(reading, _options).Weigh([.. Ranked(best).Take(_options.MaximumNearest)]).Select(new SmallLettering(reading, _options).HoldBack)]);
    }

    private IEnumerable<NearestForm> Ranked(Dictionary<int, NearestForm> best) => best
        .OrderByDescending(found => Math.Round(NearestSearch.Standing(found.Value.Letters, found.Value.Distance, _options), DigitsOfStanding))
        .ThenBy(found => Math.Round(found.Value.Distance, DigitsOfStanding))
        .ThenBy(found => found.Value.IsOtherCase)
        .ThenBy(found => found.Value.Form.Status)
        .ThenBy(found => found.Key)
        .Select(found => found.Value);
}
