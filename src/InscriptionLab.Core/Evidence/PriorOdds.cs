using System;
using System.Globalization;
using System.Linq;

namespace InscriptionLab.Evidence;

/// <summary>How the three propositions stand before the lettering is looked at. They belong to the user; the program has none of its own.</summary>
/// <param name="House">Share of the house, above 0.</param>
/// <param name="Period">Share of others of its time, above 0.</param>
/// <param name="Modern">Share of modern decorative pieces, above 0.</param>
/// <param name="AsGiven">As the user wrote them.</param>
public sealed record PriorOdds(double House, double Period, double Modern, string AsGiven)
{
    /// <summary>How a prior may be written.</summary>
    public const string Grammar = "write 3/17 (three of seventeen such pieces are the house's own; the others are halved between the two other explanations) or 3:10:4 (house, others of its time, modern), every number above zero";

    /// <summary>Understands a prior.</summary>
    /// <param name="text">"3/17" or "3:10:4".</param>
    /// <returns>The prior; null where the text is none.</returns>
    public static PriorOdds? Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (Numbers(text, '/') is [var own, var all] && own < all)
        {
            return new PriorOdds(own / all, (all - own) / all / 2, (all - own) / all / 2, text);
        }

        return Numbers(text, ':') is [var house, var period, var modern]
            ? new PriorOdds(house / (house + period + modern), period / (house + period + modern), modern / (house + period + modern), text)
            : null;
    }

    /// <summary>Gives the share of a proposition.</summary>
    public double Of(Proposition proposition) => proposition switch
    {
        Proposition.House => House,
        Proposition.PeriodOther => Period,
        _ => Modern,
    };

    private static double[]? Numbers(string text, char delimiter)
    {
        var numbers = text.Split(delimiter).Select(part => double.TryParse(part, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number > 0 && double.IsFinite(number) ? number : 0).ToArray();
        return numbers.All(number => number > 0) ? numbers : null;
    }
}
