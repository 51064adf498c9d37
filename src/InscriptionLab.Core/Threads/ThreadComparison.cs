using System;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;

namespace InscriptionLab.Threads;

/// <summary>A measured pitch beside the standard series. The pitch is never moved to a standard one: old private threads are the rule.</summary>
/// <param name="Family">Family that the interval of the pitch leaves.</param>
/// <param name="Near">Standard pitches inside the interval, in words.</param>
/// <param name="Sentence">What that says and does not say.</param>
public sealed record ThreadComparison(ThreadFamily Family, ImmutableArray<string> Near, string Sentence)
{
    /// <summary>Turns to the inch that were cut, whole numbers (a lathe's change wheels give them; halves at the coarse end).</summary>
    private const int CoarsestTurns = 8;
    private const int FinestTurns = 80;

    /// <summary>How far beyond the interval a standard pitch of the other family must lie to be ruled out, in expanded uncertainties.</summary>
    private const double RuledOut = 1.5;

    /// <summary>Lays a pitch beside the series.</summary>
    /// <param name="pitch">Pitch in millimetres.</param>
    /// <param name="expanded">Expanded uncertainty (k = 2) in millimetres.</param>
    public static ThreadComparison Of(double pitch, double expanded)
    {
        if (!(pitch > 0) || !(expanded >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(pitch), pitch, "A pitch is above zero, its uncertainty not below.");
        }

        var turns = Enumerable.Range(CoarsestTurns, FinestTurns - CoarsestTurns + 1).Select(t => (Turns: t, Off: Math.Abs(ThreadSeries.PitchOfTurns(t) - pitch))).ToArray();
        var metric = ThreadSeries.MetricPitches.Select(p => (Pitch: p, Off: Math.Abs(p - pitch))).ToArray();
        ImmutableArray<string> near =
        [
            .. turns.Where(t => t.Off <= expanded).Select(t => Words(t.Turns)),
            .. metric.Where(m => m.Off <= expanded).Select(m => string.Create(CultureInfo.InvariantCulture, $"{m.Pitch:0.###} mm (ISO 261)")),
        ];
        var (inch, iso) = (turns.Min(t => t.Off), metric.Min(m => m.Off));
        var family = (inch <= expanded, iso <= expanded) switch
        {
            (true, true) => ThreadFamily.CannotTell,
            (true, false) => iso > RuledOut * expanded ? ThreadFamily.Inch : ThreadFamily.CannotTell,
            (false, true) => inch > RuledOut * expanded ? ThreadFamily.Metric : ThreadFamily.CannotTell,
            _ => Math.Min(inch, iso) > RuledOut * expanded ? ThreadFamily.Neither : ThreadFamily.CannotTell,
        };
        return new ThreadComparison(family, near, Say(family, near));
    }

    private static string Words(int turns)
    {
        var name = turns == ThreadSeries.MicroscopeTurns ? " (as the microscope objective thread of 1858)" : ThreadSeries.WhitworthTurns.Contains(turns) ? " (in the Whitworth series)" : string.Empty;
        return string.Create(CultureInfo.InvariantCulture, $"{turns} turns to the inch{name}");
    }

    private static string Say(ThreadFamily family, ImmutableArray<string> near) => family switch
    {
        ThreadFamily.Inch => $"Agrees with {string.Join(", ", near)} and with no standard metric pitch. Private threads of whole turns to the inch are common; this alone dates nothing.",
        ThreadFamily.Metric => $"Agrees with {string.Join(", ", near)} and with no whole number of turns to the inch: on an old British piece a reason to look whether the part is a later one.",
        ThreadFamily.Neither => "Agrees with no whole number of turns to the inch and no standard metric pitch: a private thread, as most instrument threads were.",
        _ => near.IsEmpty
            ? "Cannot tell: a standard pitch lies just outside the interval."
            : $"Cannot tell: {string.Join(", ", near)} cannot be told apart or ruled out by this measurement. Photograph more turns of the thread, larger, level with the scale.",
    };
}
