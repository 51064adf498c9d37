using System;
using System.Collections.Immutable;
using InscriptionLab.Measures;

namespace InscriptionLab.Tubes;

/// <summary>One draw tube as it lies in the photo. Coordinates are pixels of the upright photo.</summary>
/// <param name="Axis">Image of the tube's axis over the visible length.</param>
/// <param name="Silhouettes">The two outlines of the tube, the upper (or left) one first, each over the visible length.</param>
/// <param name="Diameter">Distance between the silhouettes, square to the axis, at the middle of the visible length.</param>
/// <param name="Pose">The cylinder in front of the camera that has these outlines.</param>
/// <param name="Confidence">How well edges support both silhouettes, 0 to 1.</param>
/// <param name="Notes">Sentences for the user: what was assumed (focal length) or is uncertain (an outline out of frame).</param>
public sealed record Tube(
    PixelSegment Axis,
    ImmutableArray<PixelSegment> Silhouettes,
    PixelLength Diameter,
    CylinderPose Pose,
    Probability Confidence,
    ImmutableArray<string> Notes)
{
    /// <summary>Gives the distance between the silhouettes, square to the axis, at the place of the axis nearest to a photo point: where the lettering is, for instance.</summary>
    /// <exception cref="InvalidOperationException">The axis has no length, or a silhouette is square to it.</exception>
    public PixelLength DiameterAt(PixelPoint point)
    {
        var length = Axis.Length.Pixels;
        if (!(length > 0))
        {
            throw new InvalidOperationException("An axis of no length has no direction.");
        }

        var alongX = (Axis.End.X - Axis.Start.X) / length;
        var alongY = (Axis.End.Y - Axis.Start.Y) / length;
        var along = ((point.X - Axis.Start.X) * alongX) + ((point.Y - Axis.Start.Y) * alongY);
        var foot = new PixelPoint(Axis.Start.X + (alongX * along), Axis.Start.Y + (alongY * along));

        double Across(PixelSegment outline)
        {
            var directionX = outline.End.X - outline.Start.X;
            var directionY = outline.End.Y - outline.Start.Y;
            var square = (directionX * alongX) + (directionY * alongY);
            return (((outline.Start.X - foot.X) * -directionY) + ((outline.Start.Y - foot.Y) * directionX)) / square;
        }

        return PixelLength.FromPixels(Math.Abs(Across(Silhouettes[1]) - Across(Silhouettes[0])));
    }

    /// <summary>Tells whether a photo point lies between the two outlines, drawn out beyond their ends where the point lies beyond them.</summary>
    public bool Shows(PixelPoint point) => SideOf(Silhouettes[0], point) * SideOf(Silhouettes[1], point) < 0;

    /// <summary>Tells whether a photo point lies between the two outlines and beside the visible length, so that a draw does not claim what stands on the next one.</summary>
    public bool Carries(PixelPoint point)
    {
        var (x, y) = (Axis.End.X - Axis.Start.X, Axis.End.Y - Axis.Start.Y);
        var along = ((point.X - Axis.Start.X) * x) + ((point.Y - Axis.Start.Y) * y);
        return along >= 0 && along <= (x * x) + (y * y) && Shows(point);
    }

    private static int SideOf(PixelSegment outline, PixelPoint point) => Math.Sign(
        ((outline.End.X - outline.Start.X) * (point.Y - outline.Start.Y)) - ((outline.End.Y - outline.Start.Y) * (point.X - outline.Start.X)));
}
