using System;
using System.Linq;

namespace InscriptionLab.Cells.Fitting;

/// <summary>Where each unknown of a scene stands in the list of parameters, and which input each residual belongs to.</summary>
internal sealed class SceneLayout
{
    /// <summary>Logarithm of the focal length.</summary>
    internal const int Focal = 0;

    /// <summary>Three small turns of the camera.</summary>
    internal const int Turn = 1;

    /// <summary>Three shifts of the camera, in millimetres.</summary>
    internal const int Shift = 4;

    /// <summary>Height of the rim above the scale's plane, in millimetres.</summary>
    internal const int RimHeight = 7;

    /// <summary>How far edges of the scale are seen toward light, in pixels.</summary>
    internal const int EdgeShift = 8;

    /// <summary>Radial distortion: relative displacement at the picture's corner.</summary>
    internal const int Distortion = 9;

    /// <summary>Two waves by which a disc that gives the scale is out of round, in millimetres.</summary>
    internal const int DiscRoundness = 10;

    /// <summary>X and Y of the outer circle's centre, or of an inner circle's centre beside it; then radius, depth, two waves of out-of-roundness.</summary>
    internal const int CircleSize = 6;

    /// <summary>Place of the radius among a circle's parameters.</summary>
    internal const int Radius = 2;

    /// <summary>Place of the depth among a circle's parameters.</summary>
    internal const int Depth = 3;

    /// <summary>Place of the first wave of out-of-roundness among a circle's parameters.</summary>
    internal const int Roundness = 4;
    private const int CameraSize = 12;
    private const int BoardSize = 3;
    private const int LineSize = 2;
    private const int ScenePriors = 9;
    private const int CirclePriors = 5;
    private readonly int[] _circlePoints;
    private readonly CircleRole[] _roles;

    internal SceneLayout(ScaleSighting scale, System.Collections.Immutable.ImmutableArray<CircleSighting> circles)
    {
        Boards = scale.Edges.IsEmpty ? 1 : scale.Edges.Max(e => e.Board) + 1;
        Lines = scale.Lines.IsEmpty ? 0 : scale.Lines.Max(l => l.Line) + 1;
        ScaleCount = scale.Edges.Length + scale.Lines.Length + scale.Round.Length;
        _circlePoints = [.. circles.Select(c => c.Points.Length)];
        _roles = [.. circles.Select(c => c.Role)];
    }

    internal int Boards { get; }

    internal int Lines { get; }

    internal int Circles => _roles.Length;

    /// <summary>Gets the residuals of the scale, which come first.</summary>
    internal int ScaleCount { get; }

    /// <summary>Gets the residuals of the circles, which come next.</summary>
    internal int CircleCount => _circlePoints.Sum();

    internal int ParameterCount => CircleStart(Circles);

    internal int ResidualCount => ScaleCount + CircleCount + ScenePriors + Lines + (CirclePriors * Circles);

    /// <summary>Gets the unknowns that the scale's readings alone must fix: six of the camera, the boards and the lines' places.</summary>
    internal int ScaleUnknowns => 6 + (BoardSize * (Boards - 1)) + Lines;

    internal static int BoardStart(int board) => CameraSize + (BoardSize * (board - 1));

    /// <summary>Place of a line's Y in millimetres; its turn against the ticks' row, in radians, follows.</summary>
    internal int LineAt(int line) => CameraSize + (BoardSize * (Boards - 1)) + (LineSize * line);

    internal int CircleStart(int circle) => LineAt(Lines) + (CircleSize * circle);

    /// <summary>Says which input a residual belongs to.</summary>
    internal SceneInput InputOf(int row)
    {
        if (row < ScaleCount)
        {
            return SceneInput.ScalePoints;
        }

        row -= ScaleCount;
        for (var c = 0; c < Circles; c++)
        {
            if (row < _circlePoints[c])
            {
                return EdgeOf(_roles[c]);
            }

            row -= _circlePoints[c];
        }

        if (row < ScenePriors)
        {
            return row switch
            {
                0 => SceneInput.Focal,
                1 => SceneInput.PlaneOffset,
                2 => SceneInput.ScalePoints,
                3 => SceneInput.Distortion,
                _ => SceneInput.ScalePoints,
            };
        }

        row -= ScenePriors;
        if (row < Lines)
        {
            return SceneInput.ScalePoints;
        }

        row -= Lines;
        return (row % CirclePriors) switch
        {
            0 or 1 => SceneInput.Concentricity,
            2 => SceneInput.Depth,
            _ => SceneInput.Roundness,
        };
    }

    /// <summary>Gives a step of the central difference for each parameter.</summary>
    internal double[] Steps()
    {
        const double Small = 1e-6;
        const double Millimetre = 1e-4;
        var steps = Enumerable.Repeat(Millimetre, ParameterCount).ToArray();
        steps[Focal] = Small;
        steps[Distortion] = Small;
        Array.Fill(steps, Small, Turn, 3);
        for (var b = 1; b < Boards; b++)
        {
            steps[BoardStart(b) + 2] = Small;
        }

        for (var l = 0; l < Lines; l++)
        {
            steps[LineAt(l) + 1] = Small;
        }

        return steps;
    }

    private static SceneInput EdgeOf(CircleRole role) => role switch
    {
        CircleRole.Outer => SceneInput.OuterEdge,
        CircleRole.Clear => SceneInput.ClearEdge,
        _ => SceneInput.StopEdge,
    };
}
