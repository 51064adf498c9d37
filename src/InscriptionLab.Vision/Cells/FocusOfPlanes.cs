using System.Linq;
using InscriptionLab.Cells;
using InscriptionLab.Vision.Scales;

namespace InscriptionLab.Vision.Cells;

/// <summary>Whether rim and scale are equally sharp. What is not cannot lie in one plane, whatever was stated of its height.</summary>
/// <param name="Rim">Blur of the rim's edge, standard deviation in pixels.</param>
/// <param name="Scale">Blur of the scale's edges, likewise.</param>
internal readonly record struct FocusOfPlanes(double Rim, double Scale)
{
    /// <summary>How many times softer one must be: rims are bevelled and lit, so that half as soft again is common within one plane.</summary>
    private const double Ratio = 1.7;

    /// <summary>Least difference, in pixels: below it JPEG blocks and noise decide.</summary>
    private const double Least = 0.6;

    /// <summary>Gets a value indicating whether the scale is out of the focus in which the rim is.</summary>
    internal bool ScaleIsSofter => Scale > Ratio * Rim && Scale - Rim > Least;

    /// <summary>Gets a value indicating whether the rim is out of the focus in which the scale is.</summary>
    internal bool RimIsSofter => Rim > Ratio * Ratio * Scale && Rim - Scale > 2 * Least;

    /// <summary>Measures both; null where either has too few edges that can be judged.</summary>
    /// <param name="picture">Picture in linear light.</param>
    /// <param name="scale">The scale, with its edges.</param>
    /// <param name="rim">The rim's edge.</param>
    internal static FocusOfPlanes? Of(LightPicture picture, ScaleSighting scale, CircleSighting rim)
    {
        var edges = scale.Edges.Where(edge => edge.Polarity != 0).Select(edge => edge.At);
        return EdgeWidths.Of(picture, rim.Points) is { } ofRim && EdgeWidths.Of(picture, edges) is { } ofScale ? new FocusOfPlanes(ofRim, ofScale) : null;
    }
}
