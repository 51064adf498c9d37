using System;
using System.Linq;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Tests.Rendering;

namespace InscriptionLab.Vision.Tests.Tubes;

/// <summary>How far off places lie round a tube laid flat, by the scene's own geometry.</summary>
internal static class ArcError
{
    /// <summary>Root mean square over 45 degrees to either side of what faces the camera, as a share of that arc; a turn of the whole strip is no error.</summary>
    internal static double Of(TubeScene scene, CylinderPose pose)
    {
        var projection = new CylinderProjection(pose);
        var errors = Enumerable.Range(-9, 19).Select(i => i * 5 * Math.PI / 180).Select(around =>
        {
            var seen = projection.ToSurface(scene.Project(scene.SurfaceAt(scene.Target, scene.Facing() + around)))!.Value.Around.Radians;
            return seen - (Math.Sign(seen) == Math.Sign(around) ? around : -around);
        }).ToList();
        var mean = errors.Average();
        return Math.Sqrt(errors.Average(error => (error - mean) * (error - mean))) / (Math.PI / 2);
    }
}
