using System;
using System.Collections.Generic;
using System.Globalization;
using InscriptionLab.Cells;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Cells;

namespace InscriptionLab.Vision.Tests.Cells;

/// <summary>Draws cells at random: what the measurer takes for known comes from the distributions in its options, the rest from wide ranges.</summary>
internal static class RenderedCellDraws
{
    /// <summary>Gives so many cells, each with what a user would say. In turn: the scale is level and said to be, the scale is lower by a height that is said, nothing is said and every other card lies on the table.</summary>
    internal static IEnumerable<DrawnCell> Take(int count, int seed)
    {
        var random = new Random(seed);
        var options = new CellMeasurerOptions();
        double Between(double from, double to) => from + ((to - from) * random.NextDouble());
        double Normal(double mean, double sigma) => mean + (sigma * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(Math.Tau * random.NextDouble()));
        for (var i = 0; i < count; i++)
        {
            const int Width = 960;
            var focal = Width * Math.Exp(Math.Clamp(Normal(Math.Log(options.AssumedFocal), options.AssumedFocalRelative), Math.Log(0.7), Math.Log(3)));
            var outer = Between(32, 44);
            var clear = outer * Between(0.62, 0.85);
            var kind = Enum.GetValues<ScaleKind>()[i % Enum.GetValues<ScaleKind>().Length];
            var plane = (DrawnPlane)(i / Enum.GetValues<ScaleKind>().Length % 3);
            var height = plane == DrawnPlane.Level ? 0 : Between(3, 12);
            var off = Normal(0, options.KnownOffsetMillimetres);
            if (plane == DrawnPlane.Unsaid && random.Next(2) == 0)
            {
                height = 0;
            }

            // A bank card is large: the camera stands back, and looks at it rather than at the cell.
            var large = kind == ScaleKind.Id1;
            var making = kind switch
            {
                ScaleKind.Id1 => options.Id1MakingRelative,
                ScaleKind.Disc => options.DiscMillimetres / RenderedFlats.DiscMillimetres,
                _ => options.ScaleMakingRelative,
            };
            var cell = new RenderedCell
            {
                Seed = (seed * 1000) + i,
                Width = Width,
                Focal = focal,
                Distance = focal / (large ? Between(5.2, 5.5) : Between(6.8, 7.6)),
                Aim = large ? -5 : Between(8, 12),
                TiltDegrees = Between(0, 22),
                TiltDirectionDegrees = Between(0, 360),
                RollDegrees = Between(-20, 20),
                OuterMillimetres = outer,
                ClearMillimetres = clear,
                StopMillimetres = clear * Between(0.35, 0.8),
                StopDepth = Math.Clamp(Normal(options.StopDepthMillimetres, options.StopDepthUncertaintyMillimetres), 0.5, 6),
                StopShift = Normal(0, options.ConcentricityMillimetres),
                RimHeight = height + off,
                CellHeight = height + off > 2 ? height + off + 0.3 : 8,
                Scale = kind,
                ScaleFactor = 1 + Normal(0, making),
                BlurPixels = Between(0.3, 1.1),
                Noise = Between(0.004, 0.02),
                JpegQuality = random.Next(75, 95),
                RimLight = Between(0.25, 0.6),
                PlateLight = Between(0.02, 0.08),
            };
            yield return new DrawnCell(
                cell,
                kind switch
                {
                    ScaleKind.Card => "card:100mm",
                    ScaleKind.Checkerboard => "checkerboard:5mm",
                    ScaleKind.Rule => "rule:1mm",
                    ScaleKind.Id1 => "id1",
                    ScaleKind.Disc => "disc:23.25mm",
                    ScaleKind.Points => Marked(cell.Dots.Near, cell.Dots.Far, Normal),
                    _ => "aruco:12mm",
                },
                plane,
                plane == DrawnPlane.Unsaid ? null : height);
        }
    }

    /// <summary>Gives what a user writes who marks both dots by hand, a pixel off each way.</summary>
    private static string Marked(PixelPoint near, PixelPoint far, Func<double, double, double> normal) =>
        string.Create(CultureInfo.InvariantCulture, $"points:50mm@{normal(near.X, 1):F1},{normal(near.Y, 1):F1}/{normal(far.X, 1):F1},{normal(far.Y, 1):F1}");
}
