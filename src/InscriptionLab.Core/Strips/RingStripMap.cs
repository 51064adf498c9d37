using System;
using InscriptionLab.Measures;

namespace InscriptionLab.Strips;

/// <summary>
/// The map of a strip unrolled from a flat ring: X along the ring, Y across it, the same scale in both half way between the two edges.
/// A ring lettered with the tops outward reads clockwise, one with the tops inward anticlockwise; the strip runs so that it reads left to right, upright.
/// </summary>
public sealed record RingStripMap : StripMap
{
    private readonly RingPlane _plane;

    /// <summary>Makes the map.</summary>
    /// <param name="plane">The ring.</param>
    /// <param name="topsOutward">True where the tops of the letters point away from the centre.</param>
    /// <param name="pixelsPerRadius">Strip pixels per outer radius, above zero.</param>
    /// <param name="start">Angle of the strip's first column, clockwise as seen.</param>
    /// <exception cref="ArgumentOutOfRangeException">The scale is not above zero.</exception>
    public RingStripMap(RingPlane plane, bool topsOutward, double pixelsPerRadius, Angle start)
    {
        ArgumentNullException.ThrowIfNull(plane);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(pixelsPerRadius);
        _plane = plane;
        TopsOutward = topsOutward;
        PixelsPerRadius = pixelsPerRadius;
        Start = start;
    }

    /// <summary>Gets the ring.</summary>
    public RingPlane Plane => _plane;

    /// <summary>Gets a value indicating whether the tops of the letters point away from the centre.</summary>
    public bool TopsOutward { get; }

    /// <summary>Gets the strip pixels per outer radius.</summary>
    public double PixelsPerRadius { get; }

    /// <summary>Gets the angle of the strip's first column.</summary>
    public Angle Start { get; }

    /// <summary>Gets the number of columns of one full turn.</summary>
    public double ColumnsPerTurn => 2 * Math.PI * MiddleRadius * PixelsPerRadius;

    /// <inheritdoc/>
    public override bool Bends => true;

    private double MiddleRadius => (1 + _plane.InnerRadius) / 2;

    /// <inheritdoc/>
    public override PixelPoint ToPhoto(PixelPoint point)
    {
        var turn = point.X / (MiddleRadius * PixelsPerRadius);
        var across = point.Y / PixelsPerRadius;
        return TopsOutward
            ? _plane.ToPhoto(1 - across, Angle.FromRadians(Start.Radians + turn))
            : _plane.ToPhoto(_plane.InnerRadius + across, Angle.FromRadians(Start.Radians - turn));
    }

    /// <summary>Gives the strip point that shows a photo point, in the first full turn; null off the ring's plane.</summary>
    public override PixelPoint? ToStrip(PixelPoint photoPoint)
    {
        if (_plane.ToPlane(photoPoint) is not { } at)
        {
            return null;
        }

        var turn = TopsOutward ? at.Around.Radians - Start.Radians : Start.Radians - at.Around.Radians;
        turn -= 2 * Math.PI * Math.Floor(turn / (2 * Math.PI));
        var across = TopsOutward ? 1 - at.Radius : at.Radius - _plane.InnerRadius;
        return new PixelPoint(turn * MiddleRadius * PixelsPerRadius, across * PixelsPerRadius);
    }

    /// <summary>Gives 1: a flat ring does not turn away from the camera; its even foreshortening is taken out by the map.</summary>
    public override double Stretch(PixelPoint point) => 1;
}
