using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Tubes;

namespace InscriptionLab.Gathering;

/// <summary>Tubes put together from what several photos show.</summary>
internal static class TubeOutlines
{
    /// <summary>Gives the tube with two outlines, as long as the given tubes together; null where the outlines bound no tube.</summary>
    /// <param name="like">A tube with the camera and the notes.</param>
    /// <param name="first">Upper or left outline.</param>
    /// <param name="second">The other outline.</param>
    /// <param name="seen">Tubes that show its length.</param>
    internal static Tube? Of(Tube like, PixelSegment first, PixelSegment second, IEnumerable<Tube> seen) =>
        CylinderPose.FromSilhouettes(first, second, like.Pose.Focal, like.Pose.FocalAssumed, like.Pose.PrincipalPoint) is { } pose
            ? Extended(like with { Pose = pose, Silhouettes = [first, second] }, seen)
            : null;

    /// <summary>Gives a tube as long as the given tubes together.</summary>
    internal static Tube Extended(Tube tube, IEnumerable<Tube> seen)
    {
        var projection = new CylinderProjection(tube.Pose);
        var ends = seen.SelectMany(one => new[] { one.Axis.Start, one.Axis.End }).Select(projection.AxialOf).OfType<double>().ToList();
        if (ends.Count < 2 || !(ends.Min() < ends.Max()))
        {
            return tube;
        }

        var (from, to) = (ends.Min(), ends.Max());
        PixelPoint At(double axial) => projection.Project(tube.Pose.AxisPoint + (tube.Pose.AxisDirection * axial));
        var (one, other) = (projection.Silhouette(false, from, to), projection.Silhouette(true, from, to));
        var inOrder = Distance(one, tube.Silhouettes[0]) <= Distance(other, tube.Silhouettes[0]);
        var longer = tube with { Axis = new PixelSegment(At(from), At(to)), Silhouettes = inOrder ? [one, other] : [other, one] };
        return longer with { Diameter = longer.DiameterAt(new PixelPoint((longer.Axis.Start.X + longer.Axis.End.X) / 2, (longer.Axis.Start.Y + longer.Axis.End.Y) / 2)) };
    }

    private static double Distance(PixelSegment one, PixelSegment other) => Middle(one).DistanceTo(Middle(other)).Pixels;

    private static PixelPoint Middle(PixelSegment segment) => new((segment.Start.X + segment.End.X) / 2, (segment.Start.Y + segment.End.Y) / 2);
}
