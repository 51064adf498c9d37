using System;
using System.Globalization;
using System.Text;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Records;
using InscriptionLab.Tubes;

namespace InscriptionLab.App.Reports;

/// <summary>An examination as plain text for the screen.</summary>
internal static class TextReport
{
    internal static string Of(Examination examination)
    {
        var text = new StringBuilder();
        var photo = examination.Photo;
        text.AppendLine(photo.File);
        Row(text, "photo", Invariant($"{photo.Colour.Width} x {photo.Colour.Height} pixels, sharpness {photo.Quality.Sharpness:0}, {photo.Quality.BurntFraction:P1} burnt out, {photo.Quality.BlackFraction:P1} black"));
        Row(text, "tube", examination.Tube is { } tube ? Place(tube, examination) : "none found");
        Row(text, "finding", Words.For(examination.Finding.Outcome));
        foreach (var reason in examination.Finding.Reasons)
        {
            Row(text, string.Empty, "- " + reason);
        }

        foreach (var warning in examination.Warnings)
        {
            Row(text, "note", warning);
        }

        return text.ToString();
    }

    private static string Place(Tube tube, Examination examination) =>
        Invariant($"axis from {tube.Axis.Start} to {tube.Axis.End}, {LetteredPart.DiameterOf(tube, examination.Reading).Pixels:0.0} pixels across at the lettering");

    private static void Row(StringBuilder text, string name, string value) => text.Append(CultureInfo.InvariantCulture, $"  {name,-10} {value}").AppendLine();

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
