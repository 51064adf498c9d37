using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Vision.Relief;

namespace InscriptionLab.Vision.Light;

/// <summary>The light of one line's crop over that of bare metal at the same place, less 1: below zero in dark grooves, above in bright walls. Worked out once for all who look at it.</summary>
internal sealed class LineLight
{
    /// <summary>Blurs that give bare metal, along and across, as shares of the crop's height.</summary>
    private const double MetalAlong = 1;
    private const double MetalAcross = 0.25;

    private LineLight(int width, int height, float[] over) => (Width, Height, Over) = (width, height, over);

    internal int Width { get; }

    internal int Height { get; }

    /// <summary>Gets light over that of bare metal, less 1, row after row.</summary>
    internal float[] Over { get; }

    /// <summary>Gives the light of each line, in the reading's order.</summary>
    internal static ImmutableArray<LineLight> Of(Readings.Reading reading) => [.. reading.Lines.Select(line => Of(line.Line.Crop))];

    internal static LineLight Of(GrayImage crop)
    {
        var over = Array.ConvertAll(crop.Pixels.ToArray(), SrgbLight.Of);
        var metal = FlatLight.Blurred(over, crop.Width, crop.Height, MetalAlong * crop.Height, MetalAcross * crop.Height);
        for (var i = 0; i < over.Length; i++)
        {
            over[i] = (over[i] / Math.Max(metal[i], 1e-3f)) - 1;
        }

        return new LineLight(crop.Width, crop.Height, over);
    }
}
