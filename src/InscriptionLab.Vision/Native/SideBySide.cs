using System;
using System.Collections.Generic;
using System.Linq;
using System.Runtime.ExceptionServices;
using System.Threading;
using System.Threading.Tasks;

namespace InscriptionLab.Vision.Native;

/// <summary>The same work on several things, some at a time.</summary>
internal static class SideBySide
{
    /// <summary>Maps things; the results are in order and do not depend on how many go at a time.</summary>
    /// <param name="items">Things.</param>
    /// <param name="atOnce">Most at a time.</param>
    /// <param name="map">The work; must bear to run at the same time for several things.</param>
    /// <param name="cancel">Stops between things.</param>
    internal static TResult[] Map<T, TResult>(IReadOnlyList<T> items, int atOnce, Func<T, TResult> map, CancellationToken cancel)
    {
        var results = new TResult[items.Count];
        if (atOnce == 1 || items.Count < 2)
        {
            for (var index = 0; index < results.Length; index++)
            {
                cancel.ThrowIfCancellationRequested();
                results[index] = map(items[index]);
            }

            return results;
        }

        try
        {
            Parallel.For(0, results.Length, new ParallelOptions { MaxDegreeOfParallelism = atOnce, CancellationToken = cancel }, index => results[index] = map(items[index]));
        }
        catch (AggregateException failures)
        {
            ExceptionDispatchInfo.Throw(failures.Flatten().InnerExceptions.First());
        }

        return results;
    }
}
