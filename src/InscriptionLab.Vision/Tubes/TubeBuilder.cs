using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Tubes;

namespace InscriptionLab.Vision.Tubes;

/// <summary>Makes the record of a tube from its two outlines: the cylinder, its axis and its visible length.</summary>
internal sealed class TubeBuilder
{
    private readonly TubeFinderOptions _options;

    internal TubeBuilder(TubeFinderOptions options) => _options = options;

    /// <summary>Builds a tube, or gives null where the outlines bound none.</summary>
    internal Tube? Build(Photo photo, PixelSegment first, PixelSegment second, Probability confidence, IReadOnlyList<string> notes)
    {
        var width = photo.Gray.Width;
        var height = photo.Gray.Height;
        var assumed = photo.Lens.FocalLength is null;
        var principal = new PixelPoint((width - 1) / 2.0, (height - 1) / 2.0);
        if ((photo.Lens.FocalLength ?? _options.Focal.Of(first, second, principal, Math.Max(width, height))) is not { } focal
            || CylinderPose.FromSilhouettes(first, second, focal, assumed, principal) is not { } pose)
        {
            return null;
        }

        var projection = new CylinderProjection(pose);
        var from = double.PositiveInfinity;
        var to = double.NegativeInfinity;
        foreach (var point in new[] { first.Start, first.End, second.Start, second.End })
        {
            var axial = projection.AxialOf(point);
            from = Math.Min(from, axial ?? from);
            to = Math.Max(to, axial ?? to);
        }

        if (!(from < to))
        {
            return null;
        }

        var axis = new PixelSegment(
            projection.Project(pose.AxisPoint + (pose.AxisDirection * from)),
            projection.Project(pose.AxisPoint + (pose.AxisDirection * to)));
        var said = new List<string>(notes);
        if (assumed)
        {
            var doubt = _options.Focal.Doubt(first, second, pose) is { } off
                ? string.Create(CultureInfo.InvariantCulture, $" Places 45 degrees off the middle may lie {off.Degrees:0.0} degrees elsewhere round the tube.")
                : string.Empty;
            said.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"The file does not tell the focal length; {focal.Pixels / Math.Max(width, height):0.0} times the longer side was assumed, from usual lenses and the tube's width in the picture.{doubt}"));
        }

        if (TaperWords.Of(first, second, pose) is { } taper)
        {
            said.Add(taper);
        }

        var tube = new Tube(
            axis,
            UpperOrLeftFirst(axis, projection.Silhouette(false, from, to), projection.Silhouette(true, from, to)),
            default,
            pose,
            confidence,
            [.. said]);
        var middle = new PixelPoint((axis.Start.X + axis.End.X) / 2, (axis.Start.Y + axis.End.Y) / 2);
        return tube with { Diameter = tube.DiameterAt(middle) };
    }

    private static ImmutableArray<PixelSegment> UpperOrLeftFirst(PixelSegment axis, PixelSegment one, PixelSegment other)
    {
        var level = Math.Abs(axis.End.X - axis.Start.X) >= Math.Abs(axis.End.Y - axis.Start.Y);
        var inOrder = level
            ? one.Start.Y + one.End.Y <= other.Start.Y + other.End.Y
            : one.Start.X + one.End.X <= other.Start.X + other.End.X;
        return inOrder ? [one, other] : [other, one];
    }
}
