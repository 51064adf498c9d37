using System.Collections.Generic;
using InscriptionLab.Advice;
using InscriptionLab.Measures;

namespace InscriptionLab.Assess.Planting;

/// <summary>One photo untouched and with each fault in turn.</summary>
internal static class PlantedCases
{
    /// <summary>Ink height, in pixels, of letters that were photographed from too far away.</summary>
    private const double TooSmall = 9;

    /// <summary>Gives the cases.</summary>
    /// <param name="height">Height of the letters' ink in the untouched photo, pixels.</param>
    /// <param name="middle">Middle of the lettering.</param>
    internal static IEnumerable<PlantedCase> Of(double height, PixelPoint middle)
    {
        var planter = new Planter(height, middle);
        yield return new PlantedCase("untouched", null, photo => photo);
        yield return new PlantedCase("out of focus", LimitKind.Focus, photo => planter.Focus(photo, 0.12));
        yield return new PlantedCase("moved, level", LimitKind.Motion, photo => planter.Motion(photo, 0.6, 0));
        yield return new PlantedCase("moved, slanting", LimitKind.Motion, photo => planter.Motion(photo, 0.6, 60));
        yield return new PlantedCase("glare", LimitKind.Glare, photo => planter.Glare(photo, 1.2));
        yield return new PlantedCase("too dark", LimitKind.TooDark, photo => Planter.Exposed(photo, 0.13));
        yield return new PlantedCase("too bright", LimitKind.TooBright, photo => Planter.Exposed(photo, 7));
        yield return new PlantedCase("flat light", LimitKind.FlatLight, photo => planter.Flat(photo, 0.15));
        yield return new PlantedCase("squeezed", LimitKind.Compression, photo => Planter.Squeezed(photo, 8));
        yield return new PlantedCase("too far away", LimitKind.Pixels, photo => Planter.Smaller(photo, TooSmall / height));
    }
}
