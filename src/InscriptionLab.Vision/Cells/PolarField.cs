using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Scales;

namespace InscriptionLab.Vision.Cells;

/// <summary>How steeply light changes along the radii of circles in one plane: where much of a circle shows a step beyond the surfaces' own unevenness, there is an edge.</summary>
internal sealed class PolarField
{
    /// <summary>Directions.</summary>
    private const int Directions = 180;

    /// <summary>Distance of radii in pixels.</summary>
    private const double RadiusStep = 0.5;

    /// <summary>Radii to each side over which the ordinary slope is taken, in steps.</summary>
    private const int NoiseReach = 28;

    /// <summary>Significance that counts half of what it could: a glint shall not outvote the rest.</summary>
    private const double Half = 4;

    /// <summary>Neighbouring directions to each side over which the median is taken: an edge keeps its sign over them, letters and scratches do not.</summary>
    private const int MedianReach = 4;
    private readonly double[][] _slope;

    private PolarField(double[][] slope, double firstRadius, double radiusStep)
    {
        _slope = slope;
        FirstRadius = firstRadius;
        Step = radiusStep;
        Strengths = Measure();
    }

    /// <summary>Gets the first radius in millimetres.</summary>
    internal double FirstRadius { get; }

    /// <summary>Gets the distance of radii in millimetres.</summary>
    internal double Step { get; }

    /// <summary>Gets for each radius the mean significance of the steps round the circle, from 0 to 4.</summary>
    internal double[] Strengths { get; }

    /// <summary>Samples the field.</summary>
    internal static PolarField Of(LightPicture picture, PlaneCamera camera, Vector3D centre, double from, double to)
    {
        var step = RadiusStep / camera.PixelsPerMillimetre(centre);
        var count = Math.Max(0, (int)((to - from) / step));
        var slope = new double[Directions][];
        for (var d = 0; d < Directions; d++)
        {
            var (s, c) = Math.SinCos(d * Math.Tau / Directions);
            var light = new double[count + 4];
            for (var i = 0; i < light.Length; i++)
            {
                var radius = from + ((i - 2) * step);
                var sum = 0.0;
                for (var k = -1; k <= 1; k++)
                {
                    // Neighbours along the circle, about a pixel apart.
                    var (x, y) = (centre.X + (radius * c) - (2 * k * step * s), centre.Y + (radius * s) + (2 * k * step * c));
                    var at = camera.Project(new Vector3D(x, y, centre.Z));
                    sum += picture.At(at.X, at.Y);
                }

                light[i] = sum / 3;
            }

            slope[d] = new double[count];
            for (var i = 0; i < count; i++)
            {
                slope[d][i] = ((light[i + 3] + light[i + 4]) - (light[i] + light[i + 1])) / 4;
            }
        }

        return new PolarField(slope, from, step);
    }

    private double[] Measure()
    {
        var count = _slope[0].Length;
        var typical = new double[count];
        var column = new double[Directions];
        for (var i = 0; i < count; i++)
        {
            for (var d = 0; d < Directions; d++)
            {
                column[d] = Math.Abs(_slope[d][i]);
            }

            Array.Sort(column);
            typical[i] = column[Directions / 2];
        }

        var strengths = new double[count];
        for (var i = 0; i < count; i++)
        {
            // The ordinary slope near this radius: a low quantile, since edges raise it.
            var near = new List<double>();
            for (var j = Math.Max(0, i - NoiseReach); j <= Math.Min(count - 1, i + NoiseReach); j++)
            {
                near.Add(typical[j]);
            }

            near.Sort();
            var noise = Math.Max(near[near.Count / 3] / 0.6745, 1e-5);
            strengths[i] = Enumerable.Range(0, Directions).Average(d => Softened(Math.Abs(Median(d, i)) / noise));
        }

        return strengths;
    }

    private static double Softened(double significance) => Half * significance / (significance + Half);

    private double Median(int direction, int radius)
    {
        Span<double> near = stackalloc double[(2 * MedianReach) + 1];
        for (var k = -MedianReach; k <= MedianReach; k++)
        {
            near[k + MedianReach] = _slope[(direction + k + Directions) % Directions][radius];
        }

        near.Sort();
        return near[MedianReach];
    }
}
