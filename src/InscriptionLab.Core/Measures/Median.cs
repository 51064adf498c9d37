using System;
using System.Collections.Generic;

namespace InscriptionLab.Measures;

/// <summary>The middle of values in order: half of them are no larger and half no smaller, so that a few wrong ones do not move it far.</summary>
public static class Median
{
    /// <summary>Gives the middle value; of an even number the upper one of the two in the middle, so that it is always one of the values.</summary>
    /// <param name="values">At least one value, in any order.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no value.</exception>
    public static double Of(IEnumerable<double> values)
    {
        double[] sorted = [.. values];
        ArgumentOutOfRangeException.ThrowIfZero(sorted.Length, nameof(values));
        Array.Sort(sorted);
        return sorted[sorted.Length / 2];
    }
}
