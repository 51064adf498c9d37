using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Vision.Relief;

namespace InscriptionLab.Vision.Light;

/// <summary>
/// From which side grooves are lit. A wall that faces the lamp is bright and the other dark, so levels over bare metal are slopes in the lamp's direction; added up
/// (Frankot and Chellappa 1988) they give heights only if that direction's sign is right, for what is cut lies deep and is narrow. A stroke with unit normal u under a lamp
/// in direction l gives the vector (u.l) u times its depth: the sum over all strokes is the matrix of their normals times l, which is solved for l. A dark filling has no
/// side and drops out.
/// </summary>
internal sealed class GrooveLight
{
    /// <summary>Longest wave that counts, as a share of a crop's height: strokes with their walls, not the tube's shading.</summary>
    private const double LongestWave = 0.25;

    /// <summary>Levels that stand out farther from bare metal count as much as this: reflections are not slopes.</summary>
    private const double Outlier = 1;

    /// <summary>Columns of a piece, as a share of the crop's height: about a letter. Whole pieces are drawn again to see how far the answer scatters.</summary>
    private const double Piece = 0.75;

    /// <summary>Fewest pieces to say anything.</summary>
    private const int FewestPieces = 3;

    /// <summary>Times that pieces are drawn again (Efron and Tibshirani, An Introduction to the Bootstrap, 1993, take 50 to 200 for a standard error).</summary>
    private const int Draws = 200;

    /// <summary>Share of the matrix of normals that is added to its diagonal: strokes of one direction alone leave the other open, and then the answer stays with theirs.</summary>
    private const double Ridge = 0.2;

    private GrooveLight(double side, double spread, double agreement) => (Side, Spread, Agreement) = (side, spread, agreement);

    /// <summary>Gets the direction to the lamp over the surface, radians from the reading direction toward the foot of the letters.</summary>
    internal double Side { get; }

    /// <summary>Gets the root mean square by which directions of drawn pieces differ from <see cref="Side"/>, radians.</summary>
    internal double Spread { get; }

    /// <summary>Gets how much of what the strokes show points one way, 0 to 1.</summary>
    internal double Agreement { get; }

    /// <summary>Looks at lines that run the same way; null where there is too little of them.</summary>
    internal static GrooveLight? Of(IEnumerable<LineLight> lines)
    {
        var pieces = lines.SelectMany(Pieces).Where(piece => piece.Weight > 0).ToList();
        if (pieces.Count < FewestPieces)
        {
            return null;
        }

        var all = Sum(pieces);
        if (Direction(all) is not { } side)
        {
            return null;
        }

#pragma warning disable CA5394 // A choice of pieces is no secret, and must repeat.
        var random = new Random(1);
        var scatter = Enumerable.Range(0, Draws).Select(_ => Direction(Sum([.. pieces.Select(_ => pieces[random.Next(pieces.Count)])])) ?? (side + Math.PI))
            .Average(drawn => Math.Pow(Math.IEEERemainder(drawn - side, 2 * Math.PI), 2));
#pragma warning restore CA5394
        return new GrooveLight(side, Math.Sqrt(scatter), Math.Sqrt((all.X * all.X) + (all.Y * all.Y)) / all.Weight);
    }

    private static IEnumerable<Moments> Pieces(LineLight line)
    {
        var (width, height) = (line.Width, line.Height);
        var columns = Math.Max(1, (int)(Piece * height));
        if (width < columns)
        {
            yield break;
        }

        var down = Array.ConvertAll(line.Over, over => (float)-Math.Clamp(over, -Outlier, Outlier));
        var (slope, none) = (new FloatImage(width, height, down), new FloatImage(width, height, new float[down.Length]));
        var x = SlopeIntegrator.Integrate(slope, none, LongestWave * height);
        var y = SlopeIntegrator.Integrate(none, slope, LongestWave * height);
        for (var left = 0; left + columns <= width; left += columns)
        {
            var sum = default(Moments);
            for (var row = 0; row < height; row++)
            {
                for (var column = left; column < left + columns; column++)
                {
                    sum += Moments.Of(x[column, row], y[column, row]);
                }
            }

            yield return sum;
        }
    }

    private static double? Direction(Moments sum)
    {
        var ridge = Ridge * sum.Weight;
        var (a, b, c) = (sum.XX + ridge, sum.XY, sum.YY + ridge);
        var determinant = (a * c) - (b * b);
        var (x, y) = (((c * sum.X) - (b * sum.Y)) / determinant, ((a * sum.Y) - (b * sum.X)) / determinant);
        return determinant > 0 && (x != 0 || y != 0) ? Math.Atan2(y, x) : null;
    }

    private static Moments Sum(IEnumerable<Moments> pieces) => pieces.Aggregate(default(Moments), (sum, piece) => sum + piece);

    /// <summary>Sums of depth vectors: third powers, so that what is deep and narrow outweighs the wide and shallow ground beside it.</summary>
    private readonly record struct Moments(double X, double Y, double XX, double XY, double YY, double Weight)
    {
        public static Moments operator +(Moments one, Moments other) =>
            new(one.X + other.X, one.Y + other.Y, one.XX + other.XX, one.XY + other.XY, one.YY + other.YY, one.Weight + other.Weight);

        internal static Moments Of(double x, double y)
        {
            var length = Math.Sqrt((x * x) + (y * y));
            return new(-x * length * length, -y * length * length, x * x * length, x * y * length, y * y * length, length * length * length);
        }
    }
}
