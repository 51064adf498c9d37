using System;
using System.Collections.Generic;
using System.Collections.Immutable;

namespace InscriptionLab.Vision.Native;

/// <summary>Makes several owners of native pictures: all, or none that is left behind.</summary>
internal static class AllOrNone
{
    /// <summary>Makes them one after the other; where one cannot be made, those before it are disposed.</summary>
    /// <param name="making">Makes one at each step, not before.</param>
    internal static ImmutableArray<T> Of<T>(IEnumerable<T> making)
        where T : IDisposable
    {
        var made = ImmutableArray.CreateBuilder<T>();
        try
        {
            foreach (var one in making)
            {
                made.Add(one);
            }

            return made.ToImmutable();
        }
        catch
        {
            foreach (var one in made)
            {
                one.Dispose();
            }

            throw;
        }
    }
}
