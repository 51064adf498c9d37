using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Measures;

namespace InscriptionLab.Cells.Fitting;

/// <summary>Gives parameters from which an adjustment starts.</summary>
internal static class SceneStart
{
    /// <summary>Gives the parameters that a camera makes of the readings.</summary>
    internal static double[] Parameters(ScaleSighting scale, ImmutableArray<CircleSighting> circles, PlaneCamera camera, ScenePriors priors, SceneLayout layout)
    {
        var p = new double[layout.ParameterCount];
        p[SceneLayout.Focal] = Math.Log(camera.Focal);
        (p[SceneLayout.Shift], p[SceneLayout.Shift + 1], p[SceneLayout.Shift + 2]) = (camera.Shift.X, camera.Shift.Y, camera.Shift.Z);
        p[SceneLayout.RimHeight] = priors.RimHeight;
        for (var c = 0; c < circles.Length; c++)
        {
            var (depth, _) = priors.DepthOf(circles[c].Role);
            var plane = depth - priors.RimHeight;
            var world = circles[c].Points.Select(point => camera.BackProject(point, plane)).Select(w => new PixelPoint(w.X, w.Y)).ToArray();
            var fit = CircleFit.Linear(world);
            var own = layout.CircleStart(c);
            (p[own], p[own + 1]) = c == 0 ? (fit.CentreX, fit.CentreY) : (0, 0);
            p[own + SceneLayout.Radius] = fit.Radius;
            p[own + SceneLayout.Depth] = depth;
        }

        for (var l = 0; l < layout.Lines; l++)
        {
            p[layout.LineAt(l)] = scale.Lines.Where(o => o.Line == l).Average(o => camera.BackProject(o.At, 0).Y);
        }

        for (var b = 1; b < layout.Boards; b++)
        {
            Board(scale, camera, b, p);
        }

        return p;
    }

    /// <summary>Lays a board by its corners: the turn and shift that bring them nearest to where they are seen.</summary>
    private static void Board(ScaleSighting scale, PlaneCamera camera, int board, double[] p)
    {
        var corners = scale.Corners.Where(c => c.Board == board).ToArray();
        var seen = corners.Select(c => camera.BackProject(c.At, 0)).ToArray();
        var (mx, my) = (corners.Average(c => c.X), corners.Average(c => c.Y));
        var (sx, sy) = (seen.Average(s => s.X), seen.Average(s => s.Y));
        var (dot, cross) = (0.0, 0.0);
        for (var i = 0; i < corners.Length; i++)
        {
            dot += ((corners[i].X - mx) * (seen[i].X - sx)) + ((corners[i].Y - my) * (seen[i].Y - sy));
            cross += ((corners[i].X - mx) * (seen[i].Y - sy)) - ((corners[i].Y - my) * (seen[i].X - sx));
        }

        var angle = Math.Atan2(cross, dot);
        var (sin, cos) = Math.SinCos(angle);
        var own = SceneLayout.BoardStart(board);
        p[own] = sx - ((mx * cos) - (my * sin));
        p[own + 1] = sy - ((mx * sin) + (my * cos));
        p[own + 2] = angle;
    }
}
