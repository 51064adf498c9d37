using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Measures;

namespace InscriptionLab.Cells.Fitting;

/// <summary>Parameters, observations and weights of one adjustment. The rotation is held as small turns about a camera that moves along.</summary>
internal sealed class SceneModel
{
    /// <summary>Logarithm of the focal length, three turns, three shifts, height of the rim, shift of edges toward light.</summary>
    internal const int CameraParameters = 9;
    internal const int RimHeightIndex = 7;
    private const int EdgeShiftIndex = 8;
    private const int ScenePriorRows = 3;
    private const int BoardParameters = 3;
    private const int CircleParameters = 4;

    /// <summary>Standard deviation of a point before the first fit, in pixels.</summary>
    private const double FirstScatter = 0.5;

    /// <summary>No scatter is believed below this, in pixels: an 8-bit JPEG does not give more.</summary>
    private const double SmallestScatter = 0.02;

    /// <summary>Tukey's constant: residuals beyond this many standard deviations have no weight (95 % efficiency, common practice).</summary>
    private const double Tukey = 4.685;

    /// <summary>Median absolute deviation of a normal distribution of unit standard deviation.</summary>
    private const double MedianOfNormal = 0.6745;

    /// <summary>Standard uncertainty of how far blurred edges are seen toward their bright side, in pixels: of the order of the blur.</summary>
    private const double EdgeShiftUncertainty = 0.5;

    /// <summary>Most that correlation of neighbouring edge points may widen their scatter.</summary>
    private const double LargestInflation = 6;

    private readonly ScaleSighting _scale;
    private readonly ImmutableArray<CircleSighting> _circles;
    private readonly ScenePriors _priors;
    private readonly int _boards;
    private readonly int _lines;
    private readonly double[] _scaleWeights;
    private readonly double[][] _circleWeights;
    private readonly double[] _circleScatter;
    private readonly double[] _circleInflation;
    private double _scaleScatter = FirstScatter;
    private PlaneCamera _reference;
    private double _pixelsPerMillimetre;

    internal SceneModel(ScaleSighting scale, ImmutableArray<CircleSighting> circles, PlaneCamera camera, ScenePriors priors)
    {
        _scale = scale;
        _circles = circles;
        _priors = priors;
        _reference = camera;
        _boards = scale.Corners.IsEmpty ? 1 : scale.Corners.Max(c => c.Board) + 1;
        _lines = scale.Lines.IsEmpty ? 0 : scale.Lines.Max(l => l.Line) + 1;
        _scaleWeights = Enumerable.Repeat(1.0, ScaleCount).ToArray();
        _circleWeights = circles.Select(c => Enumerable.Repeat(1.0, c.Points.Length).ToArray()).ToArray();
        _circleScatter = circles.Select(_ => FirstScatter).ToArray();
        _circleInflation = circles.Select(_ => 1.0).ToArray();
        Parameters = First();
        _pixelsPerMillimetre = ScaleMiddle(camera);
        FirstBoards();
    }

    internal double[] Parameters { get; private set; }

    internal int ResidualCount => ScaleCount + _circles.Sum(c => c.Points.Length) + ScenePriorRows + (3 * _circles.Length);

    internal ImmutableArray<CircleSighting> Circles => _circles;

    internal double ScaleScatter => _scaleScatter;

    private int ScaleCount => _scale.Edges.Length + _scale.Lines.Length;

    private int CircleStart => CameraParameters + (BoardParameters * (_boards - 1)) + _lines;

    /// <summary>Camera of given parameters.</summary>
    internal PlaneCamera CameraOf(ReadOnlySpan<double> p)
    {
        var turned = _reference.Turned(new Vector3D(p[1], p[2], p[3]));
        return turned with { Focal = Math.Exp(p[0]), Shift = new Vector3D(p[4], p[5], p[6]) };
    }

    /// <summary>Circle of given parameters: centre beside the axis for the inner ones, radius, depth below the rim.</summary>
    internal SceneCircle CircleOf(ReadOnlySpan<double> p, int index)
    {
        var own = CircleStart + (CircleParameters * index);
        var (x, y) = (p[own], p[own + 1]);
        if (index > 0)
        {
            x += p[CircleStart];
            y += p[CircleStart + 1];
        }

        return new SceneCircle(
            _circles[index].Role,
            new Vector3D(x, y, p[own + 3] - p[RimHeightIndex]),
            p[own + 2],
            _circleScatter[index],
            _circleWeights[index].Count(w => w > 0));
    }

    internal int RadiusIndex(int circle) => CircleStart + (CircleParameters * circle) + 2;

    internal double Inflation(int circle) => _circleInflation[circle];

    /// <summary>Writes the residuals in units of their standard uncertainty.</summary>
    internal void Residuals(double[] p, double[] r)
    {
        var camera = CameraOf(p);
        var at = 0;
        foreach (var edge in _scale.Edges)
        {
            var world = OnBoard(p, edge.Board, camera.BackProject(edge.At, 0));
            var place = (edge.AcrossX ? world.X : world.Y) - edge.Value;
            r[at] = ((place * _pixelsPerMillimetre) - (edge.Polarity * p[EdgeShiftIndex])) * _scaleWeights[at] / _scaleScatter;
            at++;
        }

        foreach (var line in _scale.Lines)
        {
            var y = p[CameraParameters + (BoardParameters * (_boards - 1)) + line.Line];
            r[at] = (camera.BackProject(line.At, 0).Y - y) * _pixelsPerMillimetre * _scaleWeights[at] / _scaleScatter;
            at++;
        }

        for (var c = 0; c < _circles.Length; c++)
        {
            var circle = CircleOf(p, c);
            var weights = _circleWeights[c];
            var scale = _pixelsPerMillimetre / (_circleScatter[c] * _circleInflation[c]);
            for (var i = 0; i < weights.Length; i++)
            {
                var world = camera.BackProject(_circles[c].Points[i], circle.Centre.Z);
                var distance = Math.Sqrt(Square(world.X - circle.Centre.X) + Square(world.Y - circle.Centre.Y)) - circle.Radius;
                r[at++] = distance * scale * weights[i];
            }
        }

        Priors(p, r, at);
    }

    /// <summary>Which rows of the residuals belong to an input.</summary>
    internal SceneInput InputOf(int row)
    {
        if (row < ScaleCount)
        {
            return SceneInput.ScalePoints;
        }

        row -= ScaleCount;
        foreach (var circle in _circles)
        {
            if (row < circle.Points.Length)
            {
                return circle.Role switch
                {
                    CircleRole.Outer => SceneInput.OuterEdge,
                    CircleRole.Clear => SceneInput.ClearEdge,
                    _ => SceneInput.StopEdge,
                };
            }

            row -= circle.Points.Length;
        }

        return row switch
        {
            0 => SceneInput.Focal,
            1 => SceneInput.PlaneOffset,
            2 => SceneInput.ScalePoints,
            _ => (row - ScenePriorRows) % 3 == 2 ? SceneInput.Depth : SceneInput.Concentricity,
        };
    }

    /// <summary>Logarithm of the scatter of every reading, summed: minus the logarithm of the likelihood, but for a constant.</summary>
    internal double LogScatter()
    {
        var sum = ScaleCount * Math.Log(_scaleScatter);
        for (var c = 0; c < _circles.Length; c++)
        {
            // Correlated points count as the fewer independent ones they are worth.
            sum += _circles[c].Points.Length * Math.Log(_circleScatter[c]) / Square(_circleInflation[c]);
        }

        return sum;
    }

    /// <summary>Step of the central difference for each parameter.</summary>
    internal double[] Steps()
    {
        const double Turn = 1e-6;
        const double Millimetre = 1e-4;
        var steps = Enumerable.Repeat(Millimetre, Parameters.Length).ToArray();
        steps[0] = Turn;
        steps[1] = steps[2] = steps[3] = Turn;
        for (var b = 0; b < _boards - 1; b++)
        {
            steps[CameraParameters + (BoardParameters * b) + 2] = Turn;
        }

        return steps;
    }

    /// <summary>Takes over a fit without weighing anew.</summary>
    internal void Keep(LeastSquaresResult result) => Parameters = result.CopyParameters();

    /// <summary>Takes over a fit, moves the reference camera along and weighs the observations anew.</summary>
    internal void Take(LeastSquaresResult result, bool robust)
    {
        var raw = Unweighted(result.CopyParameters());
        _scaleScatter = Math.Max(SmallestScatter, ScaleSpread(raw));
        if (robust)
        {
            Weigh(raw.AsSpan(0, ScaleCount), _scaleWeights, Math.Max(SmallestScatter, MedianScatter(raw.AsSpan(0, ScaleCount))));
        }

        var at = ScaleCount;
        for (var c = 0; c < _circles.Length; c++)
        {
            var own = raw.AsSpan(at, _circles[c].Points.Length);
            var spread = Math.Max(SmallestScatter, MedianScatter(own));
            if (robust)
            {
                Weigh(own, _circleWeights[c], spread);
            }

            _circleScatter[c] = Math.Max(SmallestScatter, WeightedSpread(own, _circleWeights[c], spread));
            _circleInflation[c] = Correlation(own, _circleWeights[c]);
            at += own.Length;
        }

        var p = result.CopyParameters();
        _reference = CameraOf(p);
        (p[1], p[2], p[3]) = (0, 0, 0);
        Parameters = p;
        _pixelsPerMillimetre = ScaleMiddle(_reference);
    }

    private static double Square(double value) => value * value;

    private static double MedianScatter(ReadOnlySpan<double> values)
    {
        if (values.IsEmpty)
        {
            return 0;
        }

        var sizes = values.ToArray();
        for (var i = 0; i < sizes.Length; i++)
        {
            sizes[i] = Math.Abs(sizes[i]);
        }

        Array.Sort(sizes);
        return sizes[sizes.Length / 2] / MedianOfNormal;
    }

    private static void Weigh(ReadOnlySpan<double> residuals, double[] weights, double spread)
    {
        for (var i = 0; i < weights.Length; i++)
        {
            var u = residuals[i] / (Tukey * spread);

            // The residual is multiplied by the root of Tukey's weight.
            weights[i] = Math.Abs(u) < 1 ? 1 - (u * u) : 0;
        }
    }

    private static double WeightedSpread(ReadOnlySpan<double> residuals, double[] weights, double fallback)
    {
        var (sum, total) = (0.0, 0.0);
        for (var i = 0; i < weights.Length; i++)
        {
            if (weights[i] > 0)
            {
                sum += residuals[i] * residuals[i];
                total++;
            }
        }

        return total > 1 ? Math.Sqrt(sum / total) : fallback;
    }

    /// <summary>Root of the integrated autocorrelation of residuals in order round the circle: how much less independent the points are than their number says.</summary>
    private static double Correlation(ReadOnlySpan<double> residuals, double[] weights)
    {
        const int FewestPoints = 20;
        var kept = new List<double>();
        for (var i = 0; i < weights.Length; i++)
        {
            if (weights[i] > 0)
            {
                kept.Add(residuals[i]);
            }
        }

        if (kept.Count < FewestPoints)
        {
            return 1;
        }

        var mean = kept.Average();
        var variance = kept.Sum(v => Square(v - mean));
        var sum = 1.0;
        for (var lag = 1; lag < kept.Count / 4; lag++)
        {
            var product = 0.0;
            for (var i = 0; i + lag < kept.Count; i++)
            {
                product += (kept[i] - mean) * (kept[i + lag] - mean);
            }

            var rho = product / variance;
            if (rho < 0.05)
            {
                break;
            }

            sum += 2 * rho;
        }

        return Math.Clamp(Math.Sqrt(sum), 1, LargestInflation);
    }

    private double[] Unweighted(double[] p)
    {
        var (scaleWeights, circleWeights) = ((double[])_scaleWeights.Clone(), _circleWeights.Select(w => (double[])w.Clone()).ToArray());
        var (scaleScatter, circleScatter, inflation) = (_scaleScatter, (double[])_circleScatter.Clone(), (double[])_circleInflation.Clone());
        Array.Fill(_scaleWeights, 1);
        _scaleScatter = 1;
        for (var c = 0; c < _circles.Length; c++)
        {
            Array.Fill(_circleWeights[c], 1);
            _circleScatter[c] = 1;
            _circleInflation[c] = 1;
        }

        var raw = new double[ResidualCount];
        Residuals(p, raw);
        scaleWeights.CopyTo(_scaleWeights, 0);
        _scaleScatter = scaleScatter;
        for (var c = 0; c < _circles.Length; c++)
        {
            circleWeights[c].CopyTo(_circleWeights[c], 0);
            _circleScatter[c] = circleScatter[c];
            _circleInflation[c] = inflation[c];
        }

        return raw;
    }

    private double ScaleSpread(double[] raw)
    {
        var free = Math.Max(1, ScaleCount - (CameraParameters - 2) - (BoardParameters * (_boards - 1)) - _lines);
        var sum = 0.0;
        for (var i = 0; i < ScaleCount; i++)
        {
            sum += Square(raw[i] * _scaleWeights[i]);
        }

        return Math.Sqrt(sum / free);
    }

    /// <summary>Leads a point of the common plane into the frame of a board.</summary>
    private static (double X, double Y) OnBoard(double[] p, int board, Vector3D world)
    {
        if (board == 0)
        {
            return (world.X, world.Y);
        }

        var own = CameraParameters + (BoardParameters * (board - 1));
        var (sin, cos) = Math.SinCos(p[own + 2]);
        var (x, y) = (world.X - p[own], world.Y - p[own + 1]);
        return ((x * cos) + (y * sin), (y * cos) - (x * sin));
    }

    private void Priors(double[] p, double[] r, int at)
    {
        r[at] = (p[0] - Math.Log(_priors.Focal)) / _priors.FocalRelative;
        r[at + 1] = (p[RimHeightIndex] - _priors.RimHeight) / _priors.RimHeightUncertainty;
        r[at + 2] = p[EdgeShiftIndex] / EdgeShiftUncertainty;
        at += ScenePriorRows;
        for (var c = 0; c < _circles.Length; c++)
        {
            var own = CircleStart + (CircleParameters * c);
            var (depth, uncertainty) = _circles[c].Role switch
            {
                CircleRole.Outer => (0.0, 1e-6),
                CircleRole.Clear => (0.0, _priors.ClearDepthUncertainty),
                _ => (_priors.StopDepth, _priors.StopDepthUncertainty),
            };
            r[at] = c > 0 ? p[own] / _priors.ConcentricityUncertainty : 0;
            r[at + 1] = c > 0 ? p[own + 1] / _priors.ConcentricityUncertainty : 0;
            r[at + 2] = (p[own + 3] - depth) / uncertainty;
            at += 3;
        }
    }

    private double[] First()
    {
        var p = new double[CircleStart + (CircleParameters * _circles.Length)];
        p[0] = Math.Log(_reference.Focal);
        (p[4], p[5], p[6]) = (_reference.Shift.X, _reference.Shift.Y, _reference.Shift.Z);
        p[RimHeightIndex] = _priors.RimHeight;
        for (var c = 0; c < _circles.Length; c++)
        {
            var depth = _circles[c].Role == CircleRole.Stop ? _priors.StopDepth : 0;
            var plane = depth - _priors.RimHeight;
            var world = _circles[c].Points.Select(point => _reference.BackProject(point, plane)).Select(w => new PixelPoint(w.X, w.Y)).ToArray();
            var fit = CircleFit.Linear(world);
            var own = CircleStart + (CircleParameters * c);
            p[own] = c == 0 ? fit.CentreX : 0;
            p[own + 1] = c == 0 ? fit.CentreY : 0;
            p[own + 2] = fit.Radius;
            p[own + 3] = depth;
        }

        for (var l = 0; l < _lines; l++)
        {
            p[CameraParameters + (BoardParameters * (_boards - 1)) + l] =
                _scale.Lines.Where(o => o.Line == l).Average(o => _reference.BackProject(o.At, 0).Y);
        }

        return p;
    }

    private void FirstBoards()
    {
        for (var b = 1; b < _boards; b++)
        {
            var own = CameraParameters + (BoardParameters * (b - 1));
            var corners = _scale.Corners.Where(c => c.Board == b).ToArray();
            var seen = corners.Select(c => _reference.BackProject(c.At, 0)).ToArray();
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
            Parameters[own] = sx - ((mx * cos) - (my * sin));
            Parameters[own + 1] = sy - ((mx * sin) + (my * cos));
            Parameters[own + 2] = angle;
        }
    }

    private double ScaleMiddle(PlaneCamera camera)
    {
        if (!_scale.Corners.IsEmpty)
        {
            return camera.PixelsPerMillimetre(camera.BackProject(_scale.Corners[_scale.Corners.Length / 2].At, 0));
        }

        return _scale.Edges.IsEmpty ? 1 : camera.PixelsPerMillimetre(camera.BackProject(_scale.Edges[_scale.Edges.Length / 2].At, 0));
    }
}
