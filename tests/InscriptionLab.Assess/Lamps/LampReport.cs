using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using InscriptionLab.Assess.Scores;

namespace InscriptionLab.Assess.Lamps;

/// <summary>The light of a folder as Markdown: a row a photo, then the errors.</summary>
internal static class LampReport
{
    /// <summary>Within this, degrees, advice on where to put the lamp holds.</summary>
    private const double Useful = 45;

    internal static string Of(IReadOnlyList<LampCase> cases)
    {
        var text = new StringBuilder("| photo | light | lamp over the surface, degrees | side in the photo, degrees | told | error |\n|---|---|---|---|---|---|\n");
        foreach (var one in cases)
        {
            var told = one.IsTold ? string.Create(CultureInfo.InvariantCulture, $"{one.Told:0} +- {one.Uncertainty:0}") : "not told";
            var error = one is { IsTold: true, HasSide: true } ? one.Error.ToString("0", CultureInfo.InvariantCulture) : string.Empty;
            text.Append(CultureInfo.InvariantCulture, $"| {one.File} | {one.Mode} | {one.Height:0} | {one.True:0} | {told} | {error} |\n");
        }

        var sided = cases.Where(one => one.HasSide).ToList();
        var known = sided.Where(one => one.IsTold).ToList();
        text.Append(CultureInfo.InvariantCulture, $"\nOne raking lamp: told in {known.Count} of {sided.Count}; within {Useful:0} degrees in {known.Count(one => one.Error <= Useful)} of {known.Count}; within twice the stated uncertainty in {known.Count(one => one.Error <= 2 * one.Uncertainty)} of {known.Count}\n");
        if (Spread.Of(known.Select(one => one.Error)) is { } spread)
        {
            text.Append(CultureInfo.InvariantCulture, $"Error, degrees: median {spread.Median:0}, largest {spread.Largest:0} (of {spread.Count})\n");
        }

        var others = cases.Where(one => !one.HasSide).ToList();
        return text.Append(CultureInfo.InvariantCulture, $"Light without a side (diffuse, or from the camera): a side told in {others.Count(one => one.IsTold)} of {others.Count}\n").ToString();
    }
}
