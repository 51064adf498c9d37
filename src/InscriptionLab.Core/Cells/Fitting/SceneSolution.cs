using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using InscriptionLab.Measures;
using MathNet.Numerics.LinearAlgebra;

namespace InscriptionLab.Cells.Fitting;

/// <summary>The adjusted scene with what each input adds to the uncertainty of what is derived from it.</summary>
public sealed class SceneSolution
{
    private readonly SceneModel _model;
    private readonly LeastSquaresResult _result;
    private readonly Matrix<double> _covariance;

    internal SceneSolution(SceneModel model, LeastSquaresResult result)
    {
        _model = model;
        _result = result;
        _covariance = result.Covariance();
        Camera = model.CameraOf(result.Parameters);
        RimHeight = result.Parameters[SceneLayout.RimHeight];
        var circles = ImmutableArray.CreateBuilder<SceneCircle>(model.Circles.Length);
        for (var c = 0; c < model.Circles.Length; c++)
        {
            circles.Add(model.CircleOf(result.Parameters, c));
        }

        Circles = circles.ToImmutable();
        Cost = LogLikelihood(result);
    }

    /// <summary>Gets the camera.</summary>
    public PlaneCamera Camera { get; }

    /// <summary>Gets the circles, in the order of their sightings.</summary>
    public ImmutableArray<SceneCircle> Circles { get; }

    /// <summary>Gets the height of the rim above the scale's plane in millimetres.</summary>
    public double RimHeight { get; }

    /// <summary>Gets the standard deviation of one reading on the scale, in pixels.</summary>
    public double ScaleScatter => _model.ScaleScatter;

    /// <summary>Gets a cost by which solutions from several starts are told apart; smaller is better.</summary>
    internal double Cost { get; }

    /// <summary>Gives the share of probability, 0 to 1, that falls to this solution beside another one of the same readings.</summary>
    public double ShareBeside(SceneSolution other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return 1 / (1 + Math.Exp(Math.Clamp(Cost - other.Cost, -500, 500)));
    }

    /// <summary>Gives what each input adds to the standard uncertainty of a circle's diameter, in millimetres.</summary>
    public IReadOnlyDictionary<SceneInput, double> DiameterContributions(int circle)
    {
        var gradient = Vector<double>.Build.Dense(_result.Parameters.Length);
        gradient[_model.Layout.CircleStart(circle) + SceneLayout.Radius] = 2;
        return Contributions(gradient);
    }

    /// <summary>Gives the standard uncertainty of the distance between the camera's centre and the outer rim's plane, in millimetres.</summary>
    public double DistanceUncertainty() => Propagate(p => RimDistance(_model.CameraOf(p), p[SceneLayout.RimHeight]));

    /// <summary>Gives the relative standard uncertainty of the pixels a millimetre covers at a circle's centre, from the readings on the scale and the tilt.</summary>
    public double RelativeScaleUncertainty(int circle) => Propagate(p =>
    {
        var camera = _model.CameraOf(p);
        return Math.Log(camera.PixelsPerMillimetre(_model.CircleOf(p, circle).Centre));
    });

    /// <summary>Gives the same at a place of the scale's world, for a scene with or without circles.</summary>
    public double RelativeScaleUncertaintyAt(Vector3D world) => Propagate(p => Math.Log(_model.CameraOf(p).PixelsPerMillimetre(world)));

    /// <summary>Gives the standard uncertainty of what is worked out from the camera alone, in its own unit.</summary>
    public double UncertaintyOf(Func<PlaneCamera, double> derived) => Propagate(p => derived(_model.CameraOf(p)));

    /// <summary>Gives the distance between the camera's centre and the plane of the rim, in millimetres.</summary>
    public double RimDistance() => RimDistance(Camera, RimHeight);

    private static double RimDistance(PlaneCamera camera, double rimHeight) => -camera.Centre.Z - rimHeight;

    /// <summary>Scatter is estimated anew for each start, so the sum of squares alone says nothing: likelihoods are compared.</summary>
    private double LogLikelihood(LeastSquaresResult result)
    {
        var priors = 0.0;
        for (var row = _model.Layout.ScaleCount + _model.Layout.CircleCount; row < result.Residuals.Length; row++)
        {
            priors += result.Residuals[row] * result.Residuals[row];
        }

        return _model.LogScatter + (priors / 2);
    }

    private double Propagate(Func<double[], double> derived)
    {
        var p = _result.CopyParameters();
        var steps = _model.Layout.Steps();
        var gradient = Vector<double>.Build.Dense(p.Length);
        for (var i = 0; i < p.Length; i++)
        {
            var held = p[i];
            p[i] = held + steps[i];
            var up = derived(p);
            p[i] = held - steps[i];
            gradient[i] = (up - derived(p)) / (2 * steps[i]);
            p[i] = held;
        }

        return Math.Sqrt(Math.Max(0, gradient * (_covariance * gradient)));
    }

    private Dictionary<SceneInput, double> Contributions(Vector<double> gradient)
    {
        var influence = _result.Jacobian * (_covariance * gradient);
        var squares = new Dictionary<SceneInput, double>();
        for (var row = 0; row < influence.Count; row++)
        {
            var input = _model.Layout.InputOf(row);
            squares[input] = squares.GetValueOrDefault(input) + (influence[row] * influence[row]);
        }

        var contributions = new Dictionary<SceneInput, double>();
        foreach (var (input, square) in squares)
        {
            contributions[input] = Math.Sqrt(square);
        }

        return contributions;
    }
}
