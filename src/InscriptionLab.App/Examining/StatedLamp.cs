using System;
using System.Collections.Frozen;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Reliefs;
using InscriptionLab.Tubes;

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

    /// <summary>Gets it as it is written.</summary>
    internal string Text => string.Create(CultureInfo.InvariantCulture, $"{Side.Degrees:0.#}:{Height.Degrees:0.#}");

    /// <summary>Gives the lamps of photos over their tube; null where that of any photo is not stated: two kinds of knowledge are not mixed in one form.</summary>
    internal static IReadOnlyList<Lamp>? Over(Tube tube, IReadOnlyList<Photo> photos, Func<Photo, StatedLamp?>? stated)
    {
        ImmutableArray<StatedLamp> lamps = [.. photos.Select(photo => stated?.Invoke(photo)).OfType<StatedLamp>()];
        return lamps.IsEmpty || lamps.Length < photos.Count ? null : lamps.Select(lamp => Lamp.FromPicture(tube.Pose, lamp.Side, lamp.Height)).ToList();
    }

    private static double Number(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : double.NaN;
}
