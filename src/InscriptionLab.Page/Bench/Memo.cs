using System;
using System.Collections.Generic;

namespace InscriptionLab.Page.Bench;

/// <summary>Keeps the latest results of a stage, so that an undone correction costs nothing.</summary>
/// <typeparam name="TKey">What the result was made from.</typeparam>
/// <typeparam name="TResult">The result.</typeparam>
/// <param name="capacity">How many results are kept.</param>
internal sealed class Memo<TKey, TResult>(int capacity)
    where TKey : notnull
{
    private readonly List<(TKey Key, TResult Result)> _kept = [];

    /// <summary>Gives the kept result of a key, or makes and keeps it.</summary>
    internal (TResult Result, bool WasKept) Get(TKey key, Func<TResult> make)
    {
        var index = _kept.FindIndex(entry => EqualityComparer<TKey>.Default.Equals(entry.Key, key));
        if (index >= 0)
        {
            return (_kept[index].Result, true);
        }

        var result = make();
        _kept.Add((key, result));
        if (_kept.Count > capacity)
        {
            _kept.RemoveAt(0);
        }

        return (result, false);
    }
}
