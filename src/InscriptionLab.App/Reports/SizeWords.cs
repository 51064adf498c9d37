using System.Collections.Generic;
using InscriptionLab.Cells;
using InscriptionLab.Sizes;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports;

/// <summary>Sizes of a tube and its lettering in words.</summary>
internal static class SizeWords
{
    /// <summary>Gives the sentences; none where there are no sizes.</summary>
    internal static IEnumerable<string> Of(TubeSizes? sizes)
    {
        if (sizes is null)
        {
            yield break;
        }

        var tube = sizes.Diameter;
        yield return Invariant($"Tube: {GumStatement.Of(tube, sizes.Budget.EffectiveDegreesOfFreedom)}. = {tube.Value.Inches:0.000} in = {tube.Value.ParisLignes:0.00} Paris lignes.");
        foreach (var line in sizes.Lines)
        {
            var end = line.FromEnd is { } from ? Invariant($"; it begins or ends ({from.Value.Millimetres:0.0} \u00B1 {from.ExpandedUncertainty.Millimetres:0.0}) mm from the tube's nearer end as seen") : "; no end of the tube is seen";
            yield return Invariant($"Line {line.Line + 1}: tallest letter ({line.Tallest.Value.Millimetres:0.00} \u00B1 {line.Tallest.ExpandedUncertainty.Millimetres:0.00}) mm (k = 2), median {line.Median.Millimetres:0.00} mm{end}.");
        }

        foreach (var note in sizes.Notes)
        {
            yield return note;
        }
    }
}
