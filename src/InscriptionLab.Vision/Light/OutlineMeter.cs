using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Advice;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Tubes;

namespace InscriptionLab.Vision.Light;

/// <summary>How sharply a tube's outlines stand against the ground: slanted edges at places spread along both, and one of the sharpest.</summary>
internal static class OutlineMeter
{
    private const string Stage = "outlines";

    /// <summary>Places along each outline.</summary>
    private const int PlacesAlong = 12;

    /// <summary>Places without which nothing is said.</summary>
    private const int FewestPlaces = 3;

    /// <summary>Which place counts, by how sharp it is: a limb that fades or mirrors what lies beside it only widens an edge, so that one of the sharpest tells how sharp the photo is.</summary>
    private const double Told = 0.2;

    /// <summary>How far is looked to either side, as a share of the diameter and in pixels: farther in, the tube's own shading changes.</summary>
    private const double ReachOfDiameter = 1 / 14.0;
    private const double LeastReach = 8;
    private const double LargestReach = 32;

    /// <summary>Half the length of a place, pixels; longer, up to the second, where the outline runs nearly along pixel rows and needs it to pass from one row to the next.</summary>
    private const double HalfLength = 24;
    private const double LongestHalf = 100;

    /// <summary>Rows that an edge should pass over one place.</summary>
    private const double RowsPassed = 1.2;

    /// <summary>Measures.</summary>
    internal static Outcome<OutlineSharpness> Measure(GrayImage photo, Tube tube)
    {
        var (edges, faults) = (new List<SlantedEdge>(), new List<SlantedEdge.Fault>());
        foreach (var outline in tube.Silhouettes)
        {
            var length = outline.Length.Pixels;
            if (!(length > 0))
            {
                continue;
            }

            var along = ((outline.End.X - outline.Start.X) / length, (outline.End.Y - outline.Start.Y) / length);
            var slant = Math.Min(Math.Abs(along.Item1), Math.Abs(along.Item2));
            var half = Math.Clamp(RowsPassed / 2 / Math.Max(1e-3, slant), HalfLength, LongestHalf);
            var reach = Math.Clamp(tube.Diameter.Pixels * ReachOfDiameter, LeastReach, LargestReach);
            for (var place = 0; place < PlacesAlong; place++)
            {
                var at = length * (place + 0.5) / PlacesAlong;
                var (edge, fault) = SlantedEdge.Of(photo, new PixelPoint(outline.Start.X + (at * along.Item1), outline.Start.Y + (at * along.Item2)), along, Math.Min(half, length / 2), reach);
                if (edge is null)
                {
                    faults.Add(fault);
                }
                else
                {
                    edges.Add(edge);
                }
            }
        }

        if (edges.Count < FewestPlaces)
        {
            return new Outcome<OutlineSharpness>.Declined(Because(faults));
        }

        var told = edges.OrderBy(edge => edge.Rise).ElementAt((int)(Told * edges.Count));
        return new Outcome<OutlineSharpness>.Found(new OutlineSharpness(told.Mtf50, PixelLength.FromPixels(told.Rise), edges.Count));
    }

    private static Refusal Because(List<SlantedEdge.Fault> faults) => faults.GroupBy(fault => fault).OrderByDescending(group => group.Count()).Select(group => (SlantedEdge.Fault?)group.Key).FirstOrDefault() switch
    {
        SlantedEdge.Fault.Straight => Refuse("they run along the rows of pixels", "Hold the camera turned by a few degrees against the tube."),
        SlantedEdge.Fault.Faint => Refuse("the ground behind them is nearly as bright as the tube", "Lay the tube on a plain ground much brighter or darker than its edge."),
        SlantedEdge.Fault.Mirrored => Refuse("the metal mirrors its surroundings beside them or fades softly into the ground", "Lay the tube on a plain dull ground."),
        _ => Refuse("too little of them lies in the picture", "Take in both long sides of the tube."),
    };

    private static Refusal Refuse(string because, string remedy) => new(Stage, $"How sharp the tube's outlines are could not be measured because {because}.", remedy);
}
