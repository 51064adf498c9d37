using System.Collections.Generic;
using System.Linq;

namespace InscriptionLab.Comparison;

/// <summary>
/// Lays a form over the part of a window where it costs least: global for the form, free ends for the window, so that other words on the
/// line cost nothing (S. Needleman and C. Wunsch, J. Mol. Biol. 48 (1970) 443-453, with free end gaps, and with swapped neighbours as one step).
/// </summary>
internal sealed class Aligner
{
    private const double Tie = 1e-9;

    private readonly LetterWindow _window;
    private readonly IndexedForm _form;
    private readonly AlignmentCosts _costs;
    private readonly double[][] _cost;
    private readonly AlignmentOperation[][] _last;

    private Aligner(LetterWindow window, IndexedForm form, ComparerOptions options)
    {
        _window = window;
        _form = form;
        _costs = new AlignmentCosts(window, form, options);
        _cost = [.. Enumerable.Range(0, window.Places.Length + 1).Select(_ => new double[form.Letters.Length + 1])];
        _last = [.. Enumerable.Range(0, window.Places.Length + 1).Select(_ => new AlignmentOperation[form.Letters.Length + 1])];
    }

    /// <summary>Gives the cheapest alignment; of equally cheap ones the first in reading order. Null where the form has no letters.</summary>
    internal static Alignment? Align(LetterWindow window, IndexedForm form, ComparerOptions options) =>
        form.LetterCount == 0 ? null : new Aligner(window, form, options).Best();

    private Alignment? Best()
    {
        for (var place = 0; place <= _window.Places.Length; place++)
        {
            for (var letter = 0; letter <= _form.Letters.Length; letter++)
            {
                (_cost[place][letter], _last[place][letter]) = Cheapest(place, letter);
            }
        }

        var end = -1;
        for (var place = 0; place <= _window.Places.Length; place++)
        {
            if (_window.CanEnd[place] && _cost[place][_form.Letters.Length] < (end < 0 ? AlignmentCosts.Never : _cost[end][_form.Letters.Length] - Tie))
            {
                end = place;
            }
        }

        return end < 0 ? null : Trace(end);
    }

    /// <summary>Of equally cheap steps the one tried first wins; an added or missing letter before a match, so that of a doubled letter the second counts as the one too many.</summary>
    private (double Cost, AlignmentOperation Last) Cheapest(int place, int letter)
    {
        var best = letter == 0 && _window.CanStart[place] ? (Cost: 0.0, Last: AlignmentOperation.Start) : (Cost: AlignmentCosts.Never, Last: AlignmentOperation.Start);
        void Try(AlignmentOperation operation, int places, int letters)
        {
            if (place < places || letter < letters || _cost[place - places][letter - letters] >= best.Cost)
            {
                return;
            }

            var cost = _cost[place - places][letter - letters] + StepCost(operation, place - places, letter - letters);
            if (cost < best.Cost - Tie)
            {
                best = (cost, operation);
            }
        }

        Try(AlignmentOperation.Swap, 2, 2);
        Try(AlignmentOperation.Added, 1, 0);
        Try(AlignmentOperation.Missing, 0, 1);
        Try(AlignmentOperation.Match, 1, 1);
        Try(AlignmentOperation.Pair, 1, 2);
        return best;
    }

    private double StepCost(AlignmentOperation operation, int place, int letter) => operation switch
    {
        AlignmentOperation.Swap => _costs.Swap(place, letter),
        AlignmentOperation.Added => _costs.Added(place),
        AlignmentOperation.Missing => _costs.Missing(place, letter),
        AlignmentOperation.Match => _costs.Match(place, letter),
        _ => _costs.Pair(place, letter),
    };

    private Alignment Trace(int end)
    {
        var steps = new Stack<AlignmentStep>();
        var (place, letter) = (end, _form.Letters.Length);
        while (_last[place][letter] is not AlignmentOperation.Start)
        {
            var operation = _last[place][letter];
            (place, letter) = operation switch
            {
                AlignmentOperation.Match => (place - 1, letter - 1),
                AlignmentOperation.Missing => (place, letter - 1),
                AlignmentOperation.Added => (place - 1, letter),
                AlignmentOperation.Swap => (place - 2, letter - 2),
                _ => (place - 1, letter - 2),
            };
            steps.Push(new AlignmentStep(operation, place, letter));
        }

        return new Alignment(_window, _form, place, end, _cost[end][_form.Letters.Length], [.. steps]);
    }
}
