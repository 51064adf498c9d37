using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Measures;

namespace InscriptionLab.Cells.Fitting;

/// <summary>Observations, weights and parameters of one adjustment. The rotation is held as small turns about a camera that moves along.</summary>
internal sealed class SceneModel
{
    private readonly ScaleSighting _scale;
    private readonly ImmutableArray<CircleSighting> _circles;
    private readonly ScenePriors _priors;
    private readonly SceneWeights _scaleWeights;
    private readonly SceneWeights[] _circleWeights;
    private readonly double _cornerDistance;
    private readonly double _scaleMiddle;
    private PlaneCamera _reference;
    private double _pixelsPerMillimetre;

    internal SceneModel(ScaleSighting scale, ImmutableArray<CircleSighting> circles, PlaneCamera camera, ScenePriors priors)
    {
        _scale = scale;
        _circles = circles;
        _priors = priors;
        _reference = camera;
        Layout = new SceneLayout(scale, circles);
        _scaleWeights = new SceneWeights(Layout.ScaleCount, scale.ReadingPixels);
        _circleWeights = [.. circles.Select(c => new SceneWeights(c.Points.Length))];
        var (cx, cy) = (camera.PrincipalPoint.X, camera.PrincipalPoint.Y);
        _cornerDistance = Math.Sqrt((cx * cx) + (cy * cy));
        _scaleMiddle = scale.Edges.Where(e => e.AcrossX).Select(e => e.Value).DefaultIfEmpty(0).Average();
        _pixelsPerMillimetre = ScaleMiddle(camera);
        Parameters = SceneStart.Parameters(scale, circles, camera, priors, Layout);
    }

    internal SceneLayout Layout { get; }

    internal double[] Parameters { get; private set; }

    internal ImmutableArray<CircleSighting> Circles => _circles;

    internal double ScaleScatter => _scaleWeights.Scatter;

    /// <summary>Gets the minus logarithm of the likelihood of all readings, but for a constant.</summary>
    internal double LogScatter => _scaleWeights.LogScatter + _circleWeights.Sum(w => w.LogScatter);

    /// <summary>Camera of given parameters, without its distortion.</summary>
    internal PlaneCamera CameraOf(ReadOnlySpan<double> p)
    {
        var turned = _reference.Turned(new Vector3D(p[SceneLayout.Turn], p[SceneLayout.Turn + 1], p[SceneLayout.Turn + 2]));
        return turned with
        {
            Focal = Math.Exp(p[SceneLayout.Focal]),
            Shift = new Vector3D(p[SceneLayout.Shift], p[SceneLayout.Shift + 1], p[SceneLayout.Shift + 2]),
        };
    }

    /// <summary>Circle of given parameters.</summary>
    internal SceneCircle CircleOf(ReadOnlySpan<double> p, int index)
    {
        var own = Layout.CircleStart(index);
        var (x, y) = (p[own], p[own + 1]);
        if (index > 0)
        {
            var outer = Layout.CircleStart(0);
            (x, y) = (x + p[outer], y + p[outer + 1]);
        }

        return new SceneCircle(
            _circles[index].Role,
            new Vector3D(x, y, p[own + SceneLayout.Depth] - p[SceneLayout.RimHeight]),
            p[own + SceneLayout.Radius]);
    }

    /// <summary>Writes the residuals in units of their standard uncertainty.</summary>
    internal void Residuals(double[] p, double[] r)
    {
        Raw(p, r);
        for (var i = 0; i < Layout.ScaleCount; i++)
        {
            r[i] *= _scaleWeights.Roots[i] * _scaleWeights.Unit / (_scale.ReadingPixels is null ? _priors.ScaleInflation : 1);
        }

        var at = Layout.ScaleCount;
        foreach (var weights in _circleWeights)
        {
            foreach (var root in weights.Roots)
            {
                r[at++] *= root * weights.Unit;
            }
        }

        Priors(p, r, at);
    }

    /// <summary>Takes over a fit without weighing anew.</summary>
    internal void Keep(LeastSquaresResult result) => Parameters = result.CopyParameters();

    /// <summary>Takes over a fit, moves the reference camera along and weighs the observations anew.</summary>
    internal void Take(LeastSquaresResult result, bool robust)
    {
        var p = result.CopyParameters();
        var raw = new double[Layout.ResidualCount];
        Raw(p, raw);
        _scaleWeights.Update(raw.AsSpan(0, Layout.ScaleCount), robust, Layout.ScaleUnknowns);
        var at = Layout.ScaleCount;
        foreach (var weights in _circleWeights)
        {
            weights.Update(raw.AsSpan(at, weights.Roots.Length), robust, 3);
            at += weights.Roots.Length;
        }

        _reference = CameraOf(p);
        Array.Clear(p, SceneLayout.Turn, 3);
        Parameters = p;
        _pixelsPerMillimetre = ScaleMiddle(_reference);
    }

    /// <summary>Leads a point of the common plane into the frame of a board.</summary>
    private static (double X, double Y) OnBoard(double[] p, int board, Vector3D world)
    {
        if (board == 0)
        {
            return (world.X, world.Y);
        }

        var own = SceneLayout.BoardStart(board);
        var (sin, cos) = Math.SinCos(p[own + 2]);
        var (x, y) = (world.X - p[own], world.Y - p[own + 1]);
        return ((x * cos) + (y * sin), (y * cos) - (x * sin));
    }

    private static Vector3D FromBoard(double[] p, int board, double x, double y)
    {
        if (board == 0)
        {
            return new Vector3D(x, y, 0);
        }

        var own = SceneLayout.BoardStart(board);
        var (sin, cos) = Math.SinCos(p[own + 2]);
        return new Vector3D(p[own] + (x * cos) - (y * sin), p[own + 1] + (x * sin) + (y * cos), 0);
    }

    /// <summary>Writes the residuals of the readings in pixels of the picture: lengths in the plane would shrink with its distance and draw it away.</summary>
    private void Raw(double[] p, double[] r)
    {
        var camera = CameraOf(p);
        var centre = camera.Centre;
        var distortion = p[SceneLayout.Distortion];
        var at = 0;
        foreach (var edge in _scale.Edges)
        {
            var seen = Straightened(edge.At, distortion);
            var world = camera.BackProject(seen, 0, centre);
            var (x, y) = OnBoard(p, edge.Board, world);
            var off = (edge.AcrossX ? x : y) - edge.Value;
            var ideal = edge.AcrossX ? FromBoard(p, edge.Board, edge.Value, y) : FromBoard(p, edge.Board, x, edge.Value);
            r[at++] = Signed(off, camera.Project(ideal).DistanceTo(seen).Pixels) - (edge.Polarity * p[SceneLayout.EdgeShift]);
        }

        foreach (var line in _scale.Lines)
        {
            var seen = Straightened(line.At, distortion);
            var world = camera.BackProject(seen, 0, centre);
            var own = Layout.LineAt(line.Line);
            var y = p[own] + (p[own + 1] * (world.X - _scaleMiddle));
            r[at++] = Signed(world.Y - y, camera.Project(world with { Y = y }).DistanceTo(seen).Pixels);
        }

        foreach (var point in _scale.Round)
        {
            r[at++] = FromCircle(camera, Straightened(point, distortion), centre, default, _scale.Size.Millimetres / 2, p[SceneLayout.DiscRoundness], p[SceneLayout.DiscRoundness + 1]);
        }

        for (var c = 0; c < _circles.Length; c++)
        {
            var circle = CircleOf(p, c);
            var own = Layout.CircleStart(c) + SceneLayout.Roundness;
            foreach (var point in _circles[c].Points)
            {
                r[at++] = FromCircle(camera, Straightened(point, distortion), centre, circle.Centre, circle.Radius, p[own], p[own + 1]);
            }
        }
    }

    /// <summary>Gives how far a seen point lies outside a circle of the world that may be out of round, in pixels of the picture.</summary>
    private static double FromCircle(PlaneCamera camera, PixelPoint seen, Vector3D eye, Vector3D middle, double round, double wave, double otherWave)
    {
        var world = camera.BackProject(seen, middle.Z, eye);
        var (dx, dy) = (world.X - middle.X, world.Y - middle.Y);
        var distance = Math.Sqrt((dx * dx) + (dy * dy));
        var (cos, sin) = (dx / distance, dy / distance);
        var radius = round + (wave * ((cos * cos) - (sin * sin))) + (otherWave * 2 * sin * cos);
        var ideal = new Vector3D(middle.X + (radius * cos), middle.Y + (radius * sin), middle.Z);
        return Signed(distance - radius, camera.Project(ideal).DistanceTo(seen).Pixels);
    }

    private static double Signed(double sign, double size) => sign < 0 ? -size : size;

    private PixelPoint Straightened(PixelPoint at, double distortion)
    {
        var (x, y) = (at.X - _reference.PrincipalPoint.X, at.Y - _reference.PrincipalPoint.Y);
        var factor = 1 + (distortion * ((x * x) + (y * y)) / (_cornerDistance * _cornerDistance));
        return new PixelPoint(_reference.PrincipalPoint.X + (x * factor), _reference.PrincipalPoint.Y + (y * factor));
    }

    private void Priors(double[] p, double[] r, int at)
    {
        r[at++] = (p[SceneLayout.Focal] - Math.Log(_priors.Focal)) / _priors.FocalRelative;
        r[at++] = (p[SceneLayout.RimHeight] - _priors.RimHeight) / _priors.RimHeightUncertainty;
        r[at++] = p[SceneLayout.EdgeShift] / _priors.EdgeShiftUncertainty;
        r[at++] = p[SceneLayout.Distortion] / _priors.DistortionUncertainty;
        var camera = CameraOf(p);
        r[at++] = camera.Row2.X / _priors.TiltUncertainty;
        r[at++] = camera.Row2.Y / _priors.TiltUncertainty;

        // A disc says nothing of how the world is turned about its axis: that is a choice.
        const double Chosen = 0.1;
        r[at++] = _scale.Round.IsEmpty ? 0 : camera.Row1.X / Chosen;
        r[at++] = p[SceneLayout.DiscRoundness] * _pixelsPerMillimetre / _priors.RoundnessPixels;
        r[at++] = p[SceneLayout.DiscRoundness + 1] * _pixelsPerMillimetre / _priors.RoundnessPixels;
        for (var l = 0; l < Layout.Lines; l++)
        {
            r[at++] = p[Layout.LineAt(l) + 1] / _priors.LineTurnUncertainty;
        }

        for (var c = 0; c < _circles.Length; c++)
        {
            var own = Layout.CircleStart(c);
            var (depth, uncertainty) = _priors.DepthOf(_circles[c].Role);
            // Light that spills over one side of an edge moves its middle and bends its shape.
            var burnt = _priors.BurntEdgePixels * _circles[c].BurntShare;
            var roundness = Math.Sqrt((_priors.RoundnessPixels * _priors.RoundnessPixels) + (burnt * burnt)) / _pixelsPerMillimetre;
            var concentricity = Math.Sqrt((_priors.ConcentricityUncertainty * _priors.ConcentricityUncertainty) + (burnt * burnt / (_pixelsPerMillimetre * _pixelsPerMillimetre)));
            r[at++] = c > 0 ? p[own] / concentricity : 0;
            r[at++] = c > 0 ? p[own + 1] / concentricity : 0;
            r[at++] = (p[own + SceneLayout.Depth] - depth) / uncertainty;
            r[at++] = p[own + SceneLayout.Roundness] / roundness;
            r[at++] = p[own + SceneLayout.Roundness + 1] / roundness;
        }
    }

    private double ScaleMiddle(PlaneCamera camera) =>
        camera.PixelsPerMillimetre(camera.BackProject(_scale.Middle, 0));
}
