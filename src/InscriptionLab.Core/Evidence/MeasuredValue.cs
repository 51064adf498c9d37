using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;

namespace InscriptionLab.Evidence;

/// <summary>A measured value of a piece.</summary>
/// <param name="Name">One of <see cref="Names"/>.</param>
/// <param name="Value">Millimetres, or a plain number for the magnification.</param>
public sealed record MeasuredValue(string Name, double Value)
{
    private const string Outer = "outer_mm";
    private const string Clear = "clear_mm";
    private const string Stop = "stop_mm";
    private const string Tube = "tube_mm";
    private const string Magnification = "magnification";

    /// <summary>Ranges of museum and collectors' records of hand telescopes; outside them a slip is likelier than an unusual piece.</summary>
    private static readonly ImmutableArray<(string Name, double From, double To)> Plausible =
        [(Outer, 19, 110), (Clear, 19, 80), (Stop, 3, 80), (Tube, 25, 90), (Magnification, 5, 60)];

    /// <summary>Gets the values that a record may hold.</summary>
    public static ImmutableArray<string> Names { get; } = [.. Plausible.Select(range => range.Name)];

    /// <summary>Gives the first of the values, or pair of them, that is not like a catalogued hand telescope; null where all are.</summary>
    internal static string? Unlike(ImmutableArray<MeasuredValue> values)
    {
        double? Of(string name) => values.FirstOrDefault(value => value.Name == name)?.Value;
        var outside = Plausible.FirstOrDefault(range => Of(range.Name) is { } value && (value < range.From || value > range.To));
        return outside.Name is { } name ? string.Create(CultureInfo.InvariantCulture, $"{name} {Of(name):0.##} is outside {outside.From:0} to {outside.To:0}")
            : Of(Clear) >= Of(Outer) ? string.Create(CultureInfo.InvariantCulture, $"the clear aperture, {Of(Clear):0.##} mm, is not smaller than the outside of its cell, {Of(Outer):0.##} mm")
            : Of(Stop) > Of(Clear) ? string.Create(CultureInfo.InvariantCulture, $"the stop, {Of(Stop):0.##} mm, is wider than the clear aperture, {Of(Clear):0.##} mm")
            : null;
    }

    /// <summary>Says what the values tell of each other.</summary>
    internal static IEnumerable<string> Remarks(ImmutableArray<MeasuredValue> values)
    {
        double? Of(string name) => values.FirstOrDefault(value => value.Name == name)?.Value;
        foreach (var (name, from, to) in Plausible)
        {
            if (Of(name) is { } value && (value < from || value > to))
            {
                yield return string.Create(CultureInfo.InvariantCulture, $"{name} {value:0.##} is outside {from:0} to {to:0}, the range of catalogued hand telescopes: measure it again, and look at the unit.");
            }
        }

        if (Of(Clear) is { } clear && Of(Outer) is { } outer && clear >= outer)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"The clear aperture, {clear:0.##} mm, is not smaller than the outside of its cell, {outer:0.##} mm: one of the two is a slip, or they are of different parts.");
        }

        if (Of(Clear) is { } aperture && Of(Stop) is { } stop)
        {
            yield return stop > aperture
                ? string.Create(CultureInfo.InvariantCulture, $"The stop, {stop:0.##} mm, is wider than the clear aperture, {aperture:0.##} mm: it stops nothing and may be of another instrument.")
                : string.Create(CultureInfo.InvariantCulture, $"The stop leaves {stop / aperture:0 %} of the clear aperture's diameter: a small stop hides a poor edge of the glass (common practice).");
        }
    }
}
