using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;

namespace InscriptionLab.Advice;

/// <summary>The photos to ask a seller for: what no photo of the set shows well.</summary>
public static class PhotoRequests
{
    /// <summary>Gives the list, the most useful first; empty where nothing is missing.</summary>
    /// <param name="photos">Advice on each photo of the piece.</param>
    /// <param name="differentLamps">True where the set holds one view under different lamps.</param>
    /// <param name="turned">True where the set holds the tube turned.</param>
    public static ImmutableArray<string> Of(ImmutableArray<PhotoAdvice> photos, bool differentLamps, bool turned) => [.. Missing(photos, differentLamps, turned)];

    private static IEnumerable<string> Missing(ImmutableArray<PhotoAdvice> photos, bool differentLamps, bool turned)
    {
        bool None(params LimitKind[] limits) => photos.All(photo => !photo.Measures.Read || limits.Any(photo.Has));
        if (photos.IsEmpty)
        {
            yield break;
        }

        if (photos.All(photo => photo.Has(LimitKind.Compression)))
        {
            yield return "The original files from the camera, by e-mail or as a shared folder: the pictures in an advertisement are squeezed.";
        }

        if (None(LimitKind.Pixels, LimitKind.Focus, LimitKind.Motion, LimitKind.CutByFrame, LimitKind.TooDark, LimitKind.TooBright))
        {
            yield return "The lettering square on and sharp, filling the frame's width, the phone resting on something firm.";
        }
        else if (None(LimitKind.Angle))
        {
            yield return "The lettering facing the camera: the tube turned by hand, without force, or the camera moved round it.";
        }

        if (!differentLamps || None(LimitKind.FlatLight, LimitKind.LightAlongStrokes, LimitKind.Glare))
        {
            yield return "The same view twice, with the flash off and one small lamp low beside the tube: once at the end of the line of lettering, once above the line.";
        }

        if (photos.All(photo => !photo.Measures.ScaleSeen))
        {
            yield return "The lettering with a millimetre rule lying along it at the same height, and the front of the object glass with the rule across it.";
        }

        if (!turned)
        {
            yield return "The rest of the tube, a photo after each quarter turn: other lettering, repairs and seams show only there.";
        }
    }
}
