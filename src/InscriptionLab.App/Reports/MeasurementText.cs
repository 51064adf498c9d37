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
            Row(text, "camera", Invariant($"{cell.CameraDistance.Value.Millimetres:0} mm from the rim, {cell.Tilt.Degrees:0.0} degrees off its axis; the rim lies {cell.PlaneOffset.Value.Millimetres:0.0} mm above the scale"));
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

        return text.Append('\n').ToString();
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
