using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Measures;

namespace InscriptionLab.Readings;

/// <summary>
/// Weighs each letter of a spelling against its rivals. P(letter k is c | the other letters) is the probability of the spelling with c at
/// place k, summed over all alignments, over the sum for all rivals: another letter, no letter, two letters in its place (m or rn, l or ll),
/// or one letter in place of it and a neighbour. The sums are exact forward and backward variables of Graves et al. (ICML 2006).
/// </summary>
public static class LetterWeigher
{
    /// <summary>Weighs every letter of a spelling.</summary>
    /// <param name="posteriors">What the reader saw.</param>
    /// <param name="text">A spelling of the line, best the most probable one.</param>
    /// <param name="options">Which rivals to weigh; null for the defaults.</param>
    /// <returns>One entry a letter (grapheme cluster).</returns>
    /// <exception cref="ArgumentException">The reader has no class for a letter, or the line has too few frames for the spelling.</exception>
    public static ImmutableArray<LetterEvidence> Weigh(LinePosteriors posteriors, string text, LetterWeigherOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(posteriors);
        ArgumentNullException.ThrowIfNull(text);
        options ??= new LetterWeigherOptions();
        var matrix = new CtcMatrix(posteriors);
        var letters = matrix.ClassesOf(text) ?? throw new ArgumentException("The reader has no class for one of the letters.", nameof(text));
        var lattice = new CtcLattice(matrix, letters);
        if (double.IsNegativeInfinity(lattice.LogProbability))
        {
            throw new ArgumentException("The line has too few frames for the spelling.", nameof(text));
        }

        var spans = Enumerable.Range(0, letters.Length).Select(lattice.Span).ToArray();
        var characters = Graphemes.Of(text);
        var evidence = ImmutableArray.CreateBuilder<LetterEvidence>(letters.Length);
        for (var place = 0; place < letters.Length; place++)
        {
            var from = place > 0 ? (int)spans[place - 1].Centre : 0;
            var to = place + 1 < spans.Length ? (int)Math.Ceiling(spans[place + 1].Centre) : matrix.Frames - 1;
            var rivals = Rivals(posteriors, from, to, options.RivalFloor);
            var weights = Rivalries(matrix, lattice, place, rivals, posteriors.Classes);
            WeighPairs(matrix, lattice, place, [.. rivals.Take(options.PairedRivals)], posteriors.Classes, weights);
            var candidates = Normalise(weights, options.ListFloor);
            evidence.Add(new LetterEvidence(characters[place], candidates, spans[place].Start, spans[place].Centre, spans[place].End));
        }

        return evidence.MoveToImmutable();
    }

    /// <summary>Gives the classes that some frame of the stretch shows, the most probable first.</summary>
    private static List<int> Rivals(LinePosteriors posteriors, int from, int to, double floor)
    {
        var highest = new double[posteriors.Classes.Length];
        Array.Fill(highest, LogSpace.Never);
        for (var frame = from; frame <= to; frame++)
        {
            var row = posteriors.Frame(frame);
            for (var index = 0; index < row.Length; index++)
            {
                highest[index] = Math.Max(highest[index], row[index]);
            }
        }

        var least = Math.Log(floor);
        return [.. Enumerable.Range(0, highest.Length)
            .Where(index => index != posteriors.Blank && highest[index] >= least)
            .OrderByDescending(index => highest[index])];
    }

    private static Dictionary<string, double> Rivalries(CtcMatrix matrix, CtcLattice lattice, int place, List<int> rivals, ImmutableArray<string> classes)
    {
        var weights = new Dictionary<string, double>(StringComparer.Ordinal);
        var own = lattice.Letters[place];
        var before = lattice.Prefix(place);
        var after = lattice.Suffix(place + 1);
        Count(weights, classes[own], lattice.LogProbability);
        Count(weights, string.Empty, CtcLattice.Join(before, after));
        foreach (var first in rivals)
        {
            var replaced = before.Extend(matrix, first);
            if (first != own)
            {
                Count(weights, classes[first], CtcLattice.Join(replaced, after));
            }

            // One letter in place of this and the next, or of the one before and this; equal neighbours are already "no letter here".
            if (place + 1 < lattice.Letters.Length && first != own && first != lattice.Letters[place + 1])
            {
                Count(weights, classes[first], CtcLattice.Join(replaced, lattice.Suffix(place + 2)));
            }

            if (place > 0 && first != own && first != lattice.Letters[place - 1])
            {
                Count(weights, string.Empty, CtcLattice.Join(lattice.Prefix(place - 1).Extend(matrix, first), after));
            }
        }

        return weights;
    }

    private static void WeighPairs(CtcMatrix matrix, CtcLattice lattice, int place, int[] rivals, ImmutableArray<string> classes, Dictionary<string, double> weights)
    {
        foreach (var first in rivals)
        {
            var replaced = lattice.Prefix(place).Extend(matrix, first);
            foreach (var second in rivals.Where(second => IsNewPair(lattice, place, first, second)))
            {
                Count(weights, classes[first] + classes[second], CtcLattice.Join(replaced.Extend(matrix, second), lattice.Suffix(place + 1)));
            }
        }
    }

    private static void Count(Dictionary<string, double> weights, string characters, double logProbability) =>
        weights[characters] = LogSpace.Add(weights.GetValueOrDefault(characters, LogSpace.Never), logProbability);

    /// <summary>A letter put in before this one belongs to the letter before; only the first letter of a line takes it itself.</summary>
    private static bool IsNewPair(CtcLattice lattice, int place, int first, int second)
    {
        var own = lattice.Letters[place];
        var isPutBefore = second == own && first != own;
        return !(isPutBefore && place > 0);
    }

    private static ImmutableArray<LetterCandidate> Normalise(Dictionary<string, double> weights, double floor)
    {
        var sum = weights.Values.Aggregate(LogSpace.Never, LogSpace.Add);
        return [.. weights
            .Select(weight => (Characters: weight.Key, Probability: Math.Exp(weight.Value - sum)))
            .Where(weight => weight.Probability >= floor)
            .OrderByDescending(weight => weight.Probability)
            .ThenBy(weight => weight.Characters, StringComparer.Ordinal)
            .Select(weight => new LetterCandidate(weight.Characters, Probability.From(weight.Probability)))];
    }
}
