using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using InscriptionLab.Imaging;
using InscriptionLab.Readings;

namespace InscriptionLab.Vision.Reading;

/// <summary>Looks at each line crop as it is and moved a little up and down, and averages what is seen: where a letter hangs by a hair, one look turns it over when an outline moves by a tenth of a pixel.</summary>
internal static class SteadySight
{
    /// <summary>Rows by which the crop is moved either way.</summary>
    private const int Rows = 2;

    internal static LineSight[] Look(EngravedNetwork network, IReadOnlyList<GrayImage> crops, CancellationToken cancel)
    {
        GrayImage[] all = [.. crops, .. crops.Select(crop => Moved(crop, Rows)), .. crops.Select(crop => Moved(crop, -Rows))];
        var sights = network.Look(all, cancel);
        return [.. Enumerable.Range(0, crops.Count).Select(index => Mean(sights[index], sights[index + crops.Count], sights[index + (2 * crops.Count)]))];
    }

    /// <summary>Moves a crop down, its first and last row repeated.</summary>
    private static GrayImage Moved(GrayImage crop, int down)
    {
        var pixels = new byte[crop.Width * crop.Height];
        for (var row = 0; row < crop.Height; row++)
        {
            crop.Pixels.Slice(Math.Clamp(row - down, 0, crop.Height - 1) * crop.Width, crop.Width).CopyTo(pixels.AsSpan(row * crop.Width));
        }

        return new GrayImage(crop.Width, crop.Height, pixels);
    }

    private static LineSight Mean(params LineSight[] sights)
    {
        var first = sights[0];
        var classes = first.Posteriors.Classes.Length;
        var numbers = new float[first.Posteriors.Frames * classes];
        for (var frame = 0; frame < first.Posteriors.Frames; frame++)
        {
            for (var index = 0; index < classes; index++)
            {
                numbers[(frame * classes) + index] = (float)Math.Log(sights.Average(sight => Math.Exp(sight.Posteriors.Frame(frame)[index])));
            }
        }

        return first with { Posteriors = new LinePosteriors(first.Posteriors.Classes, first.Posteriors.Blank, numbers) };
    }
}
