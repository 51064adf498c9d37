using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using InscriptionLab.Findings;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.References;

namespace InscriptionLab.Evidence;

/// <summary>Height and spacing of the letters beside what the list has for the house. Nothing is said where the list or the photo lacks one of the two.</summary>
/// <param name="reading">The reading.</param>
/// <param name="finding">The finding; it names a house.</param>
/// <param name="rows">Attested rows of the house.</param>
/// <param name="known">What is known beside the reading.</param>
internal sealed class LetterSizeEvidence(Reading reading, Finding finding, ReferenceForm[] rows, Circumstances known)
{
    /// <summary>How far letters of one house may be from a listed size and still count as of it, as a share: one engraver's lettering, drawn between scribed lines and spaced by eye (common practice; the figure is a choice).</summary>
    private const double Tolerance = 0.15;

    /// <summary>The same for spacing where no tube was laid flat: letters 30 degrees off the middle of a tube look 13 % narrower.</summary>
    private const double ToleranceNotFlat = 0.25;

    /// <summary>A height known no better than this, as a share of it, is not compared.</summary>
    private const double LeastKnown = 0.25;

    internal IEnumerable<(string Statement, FeatureWeight Weight)> All() => [.. Height(), .. Spacing()];

    private IEnumerable<(string, FeatureWeight)> Height()
    {
        double[] listed = [.. rows.Select(row => row.LetterHeight?.Millimetres).OfType<double>().Distinct().Order()];
        if (listed.Length == 0 || Measured() is not { } measured)
        {
            return [];
        }

        var (height, uncertainty) = (measured.Value.Millimetres, measured.ExpandedUncertainty.Millimetres);
        var asListed = listed.Any(other => Math.Abs(height - other) <= Math.Sqrt(Math.Pow(Tolerance * other, 2) + Math.Pow(uncertainty, 2)));
        var within = uncertainty > 0 ? string.Create(CultureInfo.InvariantCulture, $" (give or take {uncertainty:0.0#})") : string.Empty;
        return uncertainty > LeastKnown * height
            ? []
            : [Seen("letter-height", asListed, string.Create(CultureInfo.InvariantCulture, $"The tallest letter is {height:0.0#} mm high{within}; the list has {Numbers(listed)} mm for the house."))];
    }

    /// <summary>The height as a person measured it, or else as the photo's scale gives it for the lines of the name.</summary>
    private Measured? Measured()
    {
        if (known.Construction?.LetterHeight is { } byHand)
        {
            return new Measured(byHand, default, 1);
        }

        return finding.Leading?.Span is { } span
            ? Enumerable.Range(span.FirstLine, span.LastLine - span.FirstLine + 1).Select(line => known.LetterHeights.GetValueOrDefault(line)).OfType<Measured>().MaxBy(measured => measured.Value)
            : null;
    }

    private IEnumerable<(string, FeatureWeight)> Spacing()
    {
        if (finding.Leading?.Span is not { } span || LetterSpacing.Of(reading, span) is not { } spacing)
        {
            return [];
        }

        var isCapitals = LetterSpacing.IsCapitals(reading.Lines.SelectMany((line, index) => line.Letters.Where((_, at) => span.Holds(index, at)).Select(letter => letter.Character)));
        double[] listed = [.. rows.Where(row => LetterSpacing.IsCapitals(Graphemes.Of(row.Form)) == isCapitals).Select(row => row.LetterSpacing).OfType<double>().Distinct().Order()];
        var tolerance = known.RunsAround is null ? ToleranceNotFlat : Tolerance;
        return listed.Length == 0
            ? []
            : [Seen("letter-spacing", listed.Any(other => Math.Abs(spacing - other) <= tolerance * other), string.Create(CultureInfo.InvariantCulture, $"From letter to letter it is {spacing:0.00} of the height of a capital; the list has {Numbers(listed)} for {(isCapitals ? "capitals" : "small letters")} of the house."))];
    }

    private static string Numbers(double[] numbers) => string.Join(" and ", numbers.Select(number => number.ToString("0.0#", CultureInfo.InvariantCulture)));

    private static (string, FeatureWeight) Seen(string feature, bool asAttested, string statement) => (statement, EvidenceTables.Weight(feature, asAttested ? "as-attested" : "other"));
}
