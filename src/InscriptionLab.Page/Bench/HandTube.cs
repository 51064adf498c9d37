using System.Collections.Immutable;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Tubes;

namespace InscriptionLab.Page.Bench;

/// <summary>Makes a tube from two outlines that a person drew.</summary>
internal static class HandTube
{
    /// <summary>Makes the tube.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="found">The tube that the program found; null where it found none.</param>
    /// <param name="drawn">What the person drew.</param>
    internal static Outcome<Tube> Of(Photo photo, Tube? found, Correction.TubeEdges drawn)
    {
        var (width, height) = (photo.Gray.Width, photo.Gray.Height);
        var longSide = width > height ? width : height;
        var principal = found?.Pose.PrincipalPoint ?? new PixelPoint((width - 1) / 2.0, (height - 1) / 2.0);

        var (first, second) = Alongside(drawn.First, drawn.Second);
        var assumed = photo.Lens.FocalLength is null;
        if (Cross(first, second)
            || (photo.Lens.FocalLength ?? new FocalGuess().Of(first, second, principal, longSide)) is not { } focal
            || CylinderPose.FromSilhouettes(first, second, focal, assumed, principal) is not { } pose)
        {
            return new Outcome<Tube>.Declined(new Refusal("tube", "The two outlines drawn by hand do not bound a tube: they cross or lie on each other.", "Draw one along each edge of the tube."));
        }

        PixelPoint Between(PixelPoint one, PixelPoint other) => new((one.X + other.X) / 2, (one.Y + other.Y) / 2);
        var axis = new PixelSegment(Between(first.Start, second.Start), Between(first.End, second.End));
        ImmutableArray<string> notes = assumed ? ["The focal length is assumed: the photo does not tell it."] : [];
        var tube = new Tube(axis, [first, second], first.Start.DistanceTo(second.Start), pose, Probability.One, notes);
        var middle = Between(axis.Start, axis.End);
        return new Outcome<Tube>.Found(tube with { Diameter = tube.DiameterAt(middle) });
    }

    /// <summary>Tells whether the ends of the one lie on both sides of the other.</summary>
    private static bool Cross(PixelSegment one, PixelSegment other)
    {
        static double Side(PixelSegment line, PixelPoint point) =>
            ((line.End.X - line.Start.X) * (point.Y - line.Start.Y)) - ((line.End.Y - line.Start.Y) * (point.X - line.Start.X));
        return Side(one, other.Start) * Side(one, other.End) <= 0 || Side(other, one.Start) * Side(other, one.End) <= 0;
    }

    /// <summary>Orders the outlines and their ends: both run the same way, to the right (down where upright), the upper (left) one first.</summary>
    private static (PixelSegment First, PixelSegment Second) Alongside(PixelSegment one, PixelSegment other)
    {
        var level = System.Math.Abs(one.End.X - one.Start.X) >= System.Math.Abs(one.End.Y - one.Start.Y);
        PixelSegment Forward(PixelSegment segment) => (level ? segment.End.X >= segment.Start.X : segment.End.Y >= segment.Start.Y) ? segment : new PixelSegment(segment.End, segment.Start);
        double Place(PixelSegment segment) => level ? segment.Start.Y + segment.End.Y : segment.Start.X + segment.End.X;
        var (a, b) = (Forward(one), Forward(other));
        return Place(a) <= Place(b) ? (a, b) : (b, a);
    }
}
