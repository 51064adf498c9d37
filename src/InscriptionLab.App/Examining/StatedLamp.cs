using System;
using System.Collections.Frozen;
using System.Collections.Generic;
using System.Globalization;
using InscriptionLab.Measures;

namespace InscriptionLab.App.Examining;

/// <summary>Where a person says that a lamp stood: <c>left</c>, <c>upper-right:25</c> or <c>135:20</c>.</summary>
/// <param name="Side">Direction over the picture, from right toward below.</param>
/// <param name="Height">Height over the plane of the picture.</param>
internal sealed record StatedLamp(Angle Side, Angle Height)
{
    internal const string Grammar = "right, lower-right, below, lower-left, left, upper-left, above, upper-right or degrees clockwise from right, and after a colon the height over the picture's plane in degrees (20 where it is left out)";

    /// <summary>Common practice of raking light is 10 to 30 degrees.</summary>
    private const double UsualHeight = 20;

    private static readonly FrozenDictionary<string, double> Sides = new Dictionary<string, double>
    {
        ["right"] = 0,
        ["lower-right"] = 45,
        ["below"] = 90,
        ["lower-left"] = 135,
        ["left"] = 180,
        ["upper-left"] = 225,
        ["above"] = 270,
        ["upper-right"] = 315,
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    /// <summary>Reads it.</summary>
    /// <returns>The lamp, or null where the text is something else.</returns>
    internal static StatedLamp? Parse(string text)
    {
        var parts = text.Split(':');
        var side = Sides.TryGetValue(parts[0], out var known) ? known : Number(parts[0]);
        var height = parts.Length == 1 ? UsualHeight : Number(parts[1]);
        return parts.Length <= 2 && double.IsFinite(side) && height is > 0 and < 90 ? new StatedLamp(Angle.FromDegrees(side), Angle.FromDegrees(height)) : null;
    }

    private static double Number(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : double.NaN;
}
