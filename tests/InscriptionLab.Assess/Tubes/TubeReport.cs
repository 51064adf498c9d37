using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using InscriptionLab.Assess.Scores;

namespace InscriptionLab.Assess.Tubes;

/// <summary>The tubes of a folder as Markdown: a row a photo, then the spreads.</summary>
internal static class TubeReport
{
    /// <summary>Relative error of the diameter above which other edges than the tube's were taken.</summary>
    private const double OtherEdges = 0.015;

    internal static string Of(IReadOnlyList<TubeCase> cases)
    {
        var text = new StringBuilder("| photo | tubes found | place of the lettered one | diameter, % | axis, degrees | arc, % | arc by the outlines alone, % | focal length | confidence | seconds |\n|---|---|---|---|---|---|---|---|---|---|\n");
        foreach (var one in cases)
        {
            text.Append(CultureInfo.InvariantCulture, $"| {one.File} | {one.Found} | {one.Place} | {one.Diameter * 100:+0.00;-0.00} | {one.Axis:0.000} | {one.Unrolled * 100:0.00} | {one.ByOutlines * 100:0.00} | {(one.FocalTold ? "told" : "assumed")} | {one.Confidence:0.00} | {one.Seconds:0.00} |\n");
        }

        var tubes = cases.Where(one => one.HasTube).ToList();
        var others = cases.Where(one => !one.HasTube).ToList();
        text.Append(CultureInfo.InvariantCulture, $"\nLettered tube found: {tubes.Count(one => one.Place > 0)} of {tubes.Count}, the likeliest one in {tubes.Count(one => one.Place == 1)}; imagined where there is none: {others.Count(one => one.Found > 0)} of {others.Count}\n");
        text.Append(CultureInfo.InvariantCulture, $"Diameter more than {OtherEdges:0.0 %} off: {tubes.Count(one => Math.Abs(one.Diameter) > OtherEdges)} of {tubes.Count(one => one.Place > 0)}\n");
        Add(text, "diameter, relative error", tubes.Select(one => Math.Abs(one.Diameter)), "0.00 %");
        Add(text, "axis, degrees", tubes.Select(one => one.Axis), "0.000");
        Add(text, "place along the arc, share of 90 degrees", tubes.Select(one => one.Unrolled), "0.00 %");
        Add(text, "the same, focal length told by the file", tubes.Where(one => one.FocalTold).Select(one => one.Unrolled), "0.00 %");
        Add(text, "the same, focal length assumed", tubes.Where(one => !one.FocalTold).Select(one => one.Unrolled), "0.00 %");
        Add(text, "the same by the outlines alone, the true focal length put in", tubes.Select(one => one.ByOutlines), "0.00 %");
        Add(text, "seconds", cases.Select(one => one.Seconds), "0.00");
        return text.ToString();
    }

    private static void Add(StringBuilder text, string what, IEnumerable<double> values, string format)
    {
        if (Spread.Of(values.Where(double.IsFinite)) is { } spread)
        {
            string Shown(double value) => value.ToString(format, CultureInfo.InvariantCulture);
            text.Append(CultureInfo.InvariantCulture, $"{what}: median {Shown(spread.Median)}, 95th percentile {Shown(spread.Percentile95)}, largest {Shown(spread.Largest)} (of {spread.Count})\n");
        }
    }
}
