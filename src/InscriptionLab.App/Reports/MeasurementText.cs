using System.Linq;
using System.Text;
using InscriptionLab.App.Measuring;
using InscriptionLab.Cells;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports;

/// <summary>A measurement as plain text for the screen.</summary>
internal static class MeasurementText
{
    internal static string Of(PhotoMeasurement measured)
    {
        var text = new StringBuilder().Append(measured.Photo.File).Append('\n');
        if (measured.Measurement is { } cell)
        {
            Row(text, "scale", ScaleWords(cell.Scale));
            Row(text, "camera", Invariant($"{cell.CameraDistance.Value.Millimetres:0} mm from the rim, {cell.Tilt.Degrees:0.0} degrees off its axis; the rim lies ({cell.PlaneOffset.Value.Millimetres:0.0} ± {cell.PlaneOffset.ExpandedUncertainty.Millimetres:0.0}) mm above the scale"));
            foreach (var circle in cell.Circles)
            {
                Row(text, NameOf(circle.Role), circle.ToStatement() + ".");
                Row(text, string.Empty, Others(circle));
            }
        }
        else
        {
            Row(text, "result", "none");
        }

        foreach (var warning in measured.Warnings)
        {
            Row(text, "mind", warning);
        }

        return text.Append(measured.Optics is { } optics ? OpticsText.Of(optics) : string.Empty).Append('\n').ToString();
    }

    /// <summary>Gives what all photos of one cell say together; empty where there is nothing of that kind.</summary>
    internal static string Together(MeasuredPhotos measured)
    {
        var text = new StringBuilder();
        if (!measured.Together.IsEmpty)
        {
            text.Append("the photos together\n");
            foreach (var circle in measured.Together)
            {
                Row(text, NameOf(circle.Role), circle.ToStatement() + ".");
                Row(text, string.Empty, Invariant($"mean of {string.Join(", ", circle.Readings.Select(reading => Invariant($"{reading.Millimetres:0.000}")))} mm"));
                if (circle.Disagreement is { } disagreement)
                {
                    Row(text, "mind", disagreement);
                }
            }

            text.Append(measured.Optics is { } optics ? OpticsText.Of(optics) : string.Empty).Append('\n');
        }

        // To lay a cell beside a scale it has to come off the tube.
        Row(text, "caution", string.Join(' ', Cautions.Sentences.Take(3)));
        return text.ToString();
    }

    internal static string ScaleWords(ScaleFound scale) => Invariant(
        $"{scale.Source} of {scale.Size.Millimetres:0.###} mm{(scale.SizeAssumed ? " (assumed)" : string.Empty)}: {scale.AtCell.PixelsPerMillimetre:0.000} pixels a millimetre at the rim, {scale.AtCell.RelativeUncertainty * 100:0.00} % standard uncertainty");

    internal static string Others(CellCircle circle) => Invariant(
        $"= {circle.Diameter.Value.Inches:0.000} in = {circle.Diameter.Value.ParisLignes:0.00} Paris lignes; edge seen along {circle.SeenShare * 100:0} % of the circle");

    internal static string NameOf(CircleRole role) => role switch
    {
        CircleRole.Outer => "rim",
        CircleRole.Clear => "aperture",
        _ => "stop",
    };

    private static void Row(StringBuilder text, string name, string value) => text.Append("  ").Append(name.PadRight(11)).Append(value).Append('\n');
}
