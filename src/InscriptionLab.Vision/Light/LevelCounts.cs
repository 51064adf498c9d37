using System;

namespace InscriptionLab.Vision.Light;

/// <summary>Counts of grey levels, or of differences between them, in steps of a sixteenth of a level: quantiles of many pixels without sorting them.</summary>
internal sealed class LevelCounts
{
    private const int StepsALevel = 16;
    private const int Lowest = -256;
    private const int Highest = 256;

    private readonly int[] _counts = new int[((Highest - Lowest) * StepsALevel) + 1];

    private int _all;

    /// <summary>Counts one level; what lies beyond -256 and 256 counts as these.</summary>
    internal void Add(float level)
    {
        _counts[(int)((Math.Clamp(level, Lowest, Highest) - Lowest) * StepsALevel)]++;
        _all++;
    }

    /// <summary>Gives the level below which a share of the pixels lie, to a sixteenth of a level; 0 for no pixels.</summary>
    internal double Quantile(double share)
    {
        var rank = (int)Math.Clamp(share * (_all - 1), 0, Math.Max(0, _all - 1));
        var below = 0;
        for (var i = 0; i < _counts.Length; i++)
        {
            below += _counts[i];
            if (below > rank)
            {
                return Lowest + ((double)i / StepsALevel);
            }
        }

        return 0;
    }
}
