using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Strips;

namespace InscriptionLab.App.Reports;

/// <summary>The two circles of a ring that was laid flat, as polygons in the photo.</summary>
internal static class RingOutline
{
    private const int Corners = 180;

    /// <summary>Gives rim and opening; none where the strip is no ring laid flat.</summary>
    internal static ImmutableArray<ImmutableArray<PixelPoint>> Of(Strip strip) => strip.Map is RingStripMap { Plane: var plane }
        ? [Circle(plane, 1), Circle(plane, plane.InnerRadius)]
        : [];

    private static ImmutableArray<PixelPoint> Circle(RingPlane plane, double radius) =>
        [.. Enumerable.Range(0, Corners).Select(i => plane.ToPhoto(radius, Angle.FromRadians(i * Math.Tau / Corners)))];
}
