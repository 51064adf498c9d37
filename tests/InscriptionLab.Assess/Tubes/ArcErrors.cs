using System;
using System.Linq;
using InscriptionLab.Assess.Scores;
using InscriptionLab.Assess.Truths;
using InscriptionLab.Measures;
using InscriptionLab.Tubes;

namespace InscriptionLab.Assess.Tubes;

/// <summary>How far off places lie on the surface unrolled: the truth's own cylinder, from its two outlines and its camera, against the one found.</summary>
internal static class ArcErrors
{
    /// <summary>Angles looked at to either side of the generatrix facing the camera.</summary>
    private const int Reach = 45;
    private const int Step = 5;

    /// <summary>Gives the root mean square error as a share of the arc looked at; a turn of the whole strip is no error. Not a number without the truth's outlines.</summary>
    internal static double Of(TruthPhoto truth, Tube tube)
    {
        if (truth.Silhouettes is not { IsDefault: false, Length: 2 } || truth.Camera is not { } camera || truth.ImageSize is not { IsDefault: false, Length: 2 })
        {
            return double.NaN;
        }

        PixelPoint At(int line, int end) => new(truth.Silhouettes[line][end][0] - BoxScorer.TruthShift, truth.Silhouettes[line][end][1] - BoxScorer.TruthShift);
        var pose = CylinderPose.FromSilhouettes(
            new PixelSegment(At(0, 0), At(0, 1)),
            new PixelSegment(At(1, 0), At(1, 1)),
            PixelLength.FromPixels(camera.Focal),
            focalAssumed: false,
            new PixelPoint((truth.ImageSize[0] - 1) / 2.0, (truth.ImageSize[1] - 1) / 2.0));
        var middle = new PixelPoint((At(0, 0).X + At(0, 1).X + At(1, 0).X + At(1, 1).X) / 4, (At(0, 0).Y + At(0, 1).Y + At(1, 0).Y + At(1, 1).Y) / 4);
        if (pose is null || new CylinderProjection(pose) is not { } right || right.AxialOf(middle) is not { } axial)
        {
            return double.NaN;
        }

        return Between(right, new CylinderProjection(tube.Pose), axial);
    }

    /// <summary>
    /// The same error had the camera's focal length been known: what the outlines alone cost. The rest of the whole error comes from the focal length.
    /// </summary>
    internal static double OfOutlines(TruthPhoto truth, Tube tube) =>
        truth.Camera is { } camera
        && CylinderPose.FromSilhouettes(tube.Silhouettes[0], tube.Silhouettes[1], PixelLength.FromPixels(camera.Focal), focalAssumed: false, tube.Pose.PrincipalPoint) is { } pose
            ? Of(truth, tube with { Pose = pose })
            : double.NaN;

    private static double Between(CylinderProjection right, CylinderProjection found, double axial)
    {
        var errors = Enumerable.Range(-Reach / Step, (2 * Reach / Step) + 1)
            .Select(i => Angle.FromDegrees(i * Step))
            .Select(around => (found.ToSurface(right.ToPhoto(new SurfacePoint(axial, around)))?.Around.Radians ?? double.NaN) - around.Radians)
            .ToList();
        var mean = errors.Average();
        return Math.Sqrt(errors.Average(error => (error - mean) * (error - mean))) / (2 * Reach * Math.PI / 180);
    }
}
