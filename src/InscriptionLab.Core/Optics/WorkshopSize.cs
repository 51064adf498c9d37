using System;
using System.Collections.Immutable;
using System.Globalization;
using InscriptionLab.Measures;

namespace InscriptionLab.Optics;

/// <summary>A round size of an old workshop near a measured one: a hint of what may have been meant, never a result.</summary>
/// <param name="Words">The round size in its own unit.</param>
/// <param name="Size">The round size.</param>
/// <param name="Within">True where it lies inside the measured size's expanded uncertainty.</param>
public sealed record WorkshopSize(string Words, Length Size, bool Within)
{
    private const double Sixteenths = 16;
    private const double HalfLignes = 2;
    private const double HalfMillimetres = 2;

    /// <summary>Gives the nearest sixteenth of an inch, half Paris ligne and half millimetre.</summary>
    public static ImmutableArray<WorkshopSize> Near(Measured measured)
    {
        ArgumentNullException.ThrowIfNull(measured);
        var sixteenths = Math.Round(measured.Value.Inches * Sixteenths);
        var lignes = Math.Round(measured.Value.ParisLignes * HalfLignes) / HalfLignes;
        var millimetres = Math.Round(measured.Value.Millimetres * HalfMillimetres) / HalfMillimetres;
        WorkshopSize Of(string words, Length size) => new(words, size, Math.Abs((size - measured.Value).Millimetres) <= measured.ExpandedUncertainty.Millimetres);
        return
        [
            Of(Inches((int)sixteenths) + " in", Length.FromInches(sixteenths / Sixteenths)),
            Of(string.Create(CultureInfo.InvariantCulture, $"{lignes:0.#} Paris lignes"), Length.FromParisLignes(lignes)),
            Of(string.Create(CultureInfo.InvariantCulture, $"{millimetres:0.#} mm"), Length.FromMillimetres(millimetres)),
        ];
    }

    private static string Inches(int sixteenths)
    {
        var (whole, rest) = Math.DivRem(sixteenths, (int)Sixteenths);
        if (rest == 0)
        {
            return whole.ToString(CultureInfo.InvariantCulture);
        }

        var divisor = (int)Sixteenths;
        while (rest % 2 == 0)
        {
            (rest, divisor) = (rest / 2, divisor / 2);
        }

        var fraction = string.Create(CultureInfo.InvariantCulture, $"{rest}/{divisor}");
        return whole == 0 ? fraction : string.Create(CultureInfo.InvariantCulture, $"{whole} {fraction}");
    }
}
