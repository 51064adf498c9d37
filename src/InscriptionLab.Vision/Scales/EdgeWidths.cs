using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Scales;

/// <summary>How wide edges are blurred: what lies before or behind the plane of focus has wider edges than what lies in it.</summary>
internal static class EdgeWidths
{
    /// <summary>How far to either side an edge is looked at, in pixels: blur wider than a third of it is not told apart.</summary>
    private const double Reach = 10;

    /// <summary>Half width, along the edge, over which light is averaged, in pixels.</summary>
    private const double HalfWidth = 2;

    /// <summary>Distance over which the direction of steepest light is taken, in pixels.</summary>
    private const double Lever = 2;

    /// <summary>Edges weaker than this, in linear light a pixel, are lost in noise.</summary>
    private const double LeastSlope = 0.01;

    /// <summary>Fewest edges that say anything.</summary>
    private const int FewestEdges = 12;

    /// <summary>Share of the edges that may be sharper than the one that counts: bevels and ticks close by widen an edge, nothing narrows it.</summary>
    private const double SharpShare = 0.25;

    /// <summary>Gives the standard deviation of the blur, in pixels, of the sharper ones of some edges; null where too few can be judged.</summary>
    /// <param name="picture">Picture in linear light.</param>
    /// <param name="places">Points on edges.</param>
    internal static double? Of(LightPicture picture, IEnumerable<PixelPoint> places)
    {
        var widths = places.Select(place => At(picture, place)).OfType<double>().Order().ToList();
        return widths.Count < FewestEdges ? null : widths[(int)(SharpShare * (widths.Count - 1))];
    }

    private static double? At(LightPicture picture, PixelPoint place)
    {
        if (!picture.Holds(place.X, place.Y, Reach + EdgeProfile.Margin))
        {
            return null;
        }

        var x = picture.At(place.X + Lever, place.Y) - picture.At(place.X - Lever, place.Y);
        var y = picture.At(place.X, place.Y + Lever) - picture.At(place.X, place.Y - Lever);
        var steep = Math.Sqrt((x * x) + (y * y));
        return steep / (2 * Lever) < LeastSlope ? null : EdgeProfile.Across(picture, place, x / steep, y / steep, Reach, HalfWidth).Blur();
    }
}
