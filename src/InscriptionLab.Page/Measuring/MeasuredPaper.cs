using System.Globalization;
using System.Linq;
using InscriptionLab.App.Measuring;
using InscriptionLab.App.Reports;
using InscriptionLab.App.Reports.Papers;
using InscriptionLab.Cells;
using InscriptionLab.Page.Bench;
using InscriptionLab.Photos;

namespace InscriptionLab.Page.Measuring;

/// <summary>What was measured in a photo of the bench, as a report shows it.</summary>
internal static class MeasuredPaper
{
    /// <summary>Gives the circles that a person kept, or else those that the program found; null where nothing was measured.</summary>
    internal static PaperPhoto? Of(PiecePhoto photo, MeasuringTable table)
    {
        if (photo.State.Photo is not { } shown)
        {
            return null;
        }

        return table.KeptOf(photo.Id) is { Circles.IsEmpty: false } kept
            ? Of(shown, kept)
            : table.Of(photo.Id) is { } found ? PaperPhotoMaker.Of(new PhotoMeasurement(shown, found.Cell, found.Warnings)) : null;
    }

    private static PaperPhoto Of(Photo photo, KeptCircles kept)
    {
        var by = string.Create(CultureInfo.InvariantCulture, $"placed by {kept.Person} ({kept.At:yyyy-MM-dd HH:mm} UTC)");
        return new PaperPhoto
        {
            Name = photo.File,
            Sha256 = photo.Sha256,
            Width = photo.Colour.Width,
            Height = photo.Colour.Height,
            Pictures = [PaperPhotoMaker.Measured(photo, [.. kept.Circles.Select(circle => circle.Ellipse)], kept.Circles[0].PixelsPerMillimetre, $"The circles, {by}.")],
            Measures = [.. kept.Circles.Select(circle => new PaperMeasure(
                Named(circle.Role),
                GumStatement.Of(circle.Diameter, circle.Budget.EffectiveDegreesOfFreedom),
                by,
                PaperPhotoMaker.Rows(circle.Budget)))],
            Hands = [string.Create(CultureInfo.InvariantCulture, $"{kept.Person} placed {Figures.Counted(kept.Circles.Length, "circle", "circles")} ({kept.At:yyyy-MM-dd HH:mm} UTC).")],
        };
    }

    private static string Named(string role) => role switch
    {
        "clear" => MeasurementText.NameOf(CircleRole.Clear),
        "stop" => MeasurementText.NameOf(CircleRole.Stop),
        _ => MeasurementText.NameOf(CircleRole.Outer),
    };
}
