using System.Linq;

namespace InscriptionLab.Vision.Relief;

/// <summary>Slopes of a surface against the cylinder, and its albedo, pixel by pixel.</summary>
/// <param name="AlongAxis">Rise to the right, per pixel.</param>
/// <param name="AlongArc">Rise downward in the strip, per pixel.</param>
/// <param name="Albedo">Brightness whatever the lamp.</param>
internal sealed record SurfaceSlopes(float[] AlongAxis, float[] AlongArc, float[] Albedo)
{
    /// <summary>Takes out what slopes have in common over a few letters: bare metal is the cylinder, and what is left of uneven light is no form.</summary>
    internal SurfaceSlopes AgainstGround(int width, int height, double sigma) => this with { AlongAxis = Against(AlongAxis, width, height, sigma), AlongArc = Against(AlongArc, width, height, sigma) };

    private static float[] Against(float[] slopes, int width, int height, double sigma)
    {
        var ground = FlatLight.Blurred(slopes, width, height, sigma, sigma);
        return [.. slopes.Zip(ground, (slope, common) => slope - common)];
    }
}
