using System;
using System.Collections.Generic;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Relief;

/// <summary>
/// Normals and albedo from the brightness of one pixel under several distant lamps of equal strength (R. J. Woodham, Optical Engineering 19, 1980, 139-144): a matt
/// surface is as bright as its albedo times the cosine between normal and lamp, which three lamps solve. Levels that are burnt out or in shadow are left
/// out; of what is left, levels that fit badly (highlights, cast shadows) lose weight over a few rounds (least absolute deviations by weights).
/// </summary>
public static class PhotometricStereo
{
    private const int Rounds = 12;

    /// <summary>Rounds stop where albedo and normal move by less than this share of the brightest level.</summary>
    private const double Settled = 1e-6;

    /// <summary>Deviation, as a share of the brightest level, below which a level counts in full.</summary>
    private const double Fits = 1e-3;

    /// <summary>Share of a pixel's middle level below which a level lies in shadow.</summary>
    private const double Shadow = 0.04;

    private const double Singular = 1e-9;

    /// <summary>Solves one pixel.</summary>
    /// <param name="levels">Linear levels under each lamp; a negative one is known to be useless (burnt out, say) and left out.</param>
    /// <param name="lamps">Unit vectors to the lamps, in the frame of the pixel.</param>
    /// <returns>Normal and albedo, or null where fewer than three lamps in three directions light the pixel.</returns>
    /// <exception cref="ArgumentException">The numbers of levels and lamps differ.</exception>
    public static ShadedPixel? Solve(ReadOnlySpan<double> levels, IReadOnlyList<Vector3D> lamps)
    {
        ArgumentNullException.ThrowIfNull(lamps);
        if (levels.Length != lamps.Count)
        {
            throw new ArgumentException("There must be one level for each lamp.", nameof(levels));
        }

        Span<double> weights = stackalloc double[levels.Length];
        var (brightest, sum, count) = (0.0, 0.0, 0);
        foreach (var level in levels)
        {
            (brightest, sum, count) = (Math.Max(brightest, level), sum + Math.Max(0, level), count + (level >= 0 ? 1 : 0));
        }

        var used = 0;
        for (var i = 0; i < levels.Length; i++)
        {
            weights[i] = levels[i] >= 0 && levels[i] > Shadow * sum / count ? 1 : 0;
            used += weights[i] > 0 ? 1 : 0;
        }

        if (used < 3)
        {
            return null;
        }

        Vector3D? solution = null;
        for (var round = 0; round < (used > 3 ? Rounds : 1); round++)
        {
            if (Weighed(levels, lamps, weights) is not { } next)
            {
                break;
            }

            var moved = solution is { } before ? (next - before).Norm : double.PositiveInfinity;
            solution = next;
            if (moved < Settled * brightest)
            {
                break;
            }

            for (var i = 0; i < levels.Length; i++)
            {
                weights[i] = weights[i] > 0 ? 1 / Math.Max(Fits, Math.Abs(levels[i] - next.Dot(lamps[i])) / brightest) : 0;
            }
        }

        return solution is { } scaled && scaled.Norm > 0 ? new ShadedPixel(scaled.Normalised(), scaled.Norm) : null;
    }

    /// <summary>Solves the weighed normal equations by Cramer's rule.</summary>
    private static Vector3D? Weighed(ReadOnlySpan<double> levels, IReadOnlyList<Vector3D> lamps, ReadOnlySpan<double> weights)
    {
        var (xx, xy, xz, yy, yz, zz, total) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
        var right = default(Vector3D);
        for (var i = 0; i < levels.Length; i++)
        {
            if (weights[i] > 0)
            {
                var (lamp, weight) = (lamps[i], weights[i]);
                (xx, xy, xz) = (xx + (weight * lamp.X * lamp.X), xy + (weight * lamp.X * lamp.Y), xz + (weight * lamp.X * lamp.Z));
                (yy, yz, zz) = (yy + (weight * lamp.Y * lamp.Y), yz + (weight * lamp.Y * lamp.Z), zz + (weight * lamp.Z * lamp.Z));
                right += lamp * (weight * levels[i]);
                total += weight;
            }
        }

        var (first, second, third) = (new Vector3D(xx, xy, xz), new Vector3D(xy, yy, yz), new Vector3D(xz, yz, zz));
        var determinant = first.Dot(second.Cross(third));
        return determinant > Singular * total * total * total
            ? new Vector3D(right.Dot(second.Cross(third)), right.Dot(third.Cross(first)), right.Dot(first.Cross(second))) * (1 / determinant)
            : null;
    }
}
