using System;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using InscriptionLab.App.Measuring;
using InscriptionLab.App.Reports.Html;
using InscriptionLab.Files;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Pictures;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports;

/// <summary>The folder of a measurement: the page, the record, and each photo with its circles and scale marked.</summary>
internal static class MeasurementFolder
{
    internal const string Page = "measurement.html";
    internal const string Record = "record.json";

    /// <summary>Corners of the polygon that stands for an ellipse when it is painted: at 500 pixels of radius it is 0.02 pixels off (computed).</summary>
    private const int Corners = 360;

    /// <summary>Half the side of the cross at a point of the scale, in pixels.</summary>
    private const double Cross = 4;

    /// <summary>Names a folder after the first photo.</summary>
    internal static string NameFor(string firstPhoto) => "measurement-" + Path.GetFileNameWithoutExtension(firstPhoto);

    /// <summary>Writes the folder; files of an earlier measurement with the same names are replaced, others are left alone.</summary>
    internal static void Write(string folder, MeasuredPhotos measured, Provenance provenance)
    {
        Directory.CreateDirectory(folder);
        var photos = measured.Photos;
        for (var i = 0; i < photos.Length; i++)
        {
            var stem = Path.GetFileNameWithoutExtension(photos[i].Photo.File);
            var name = photos.Length == 1 ? stem : Invariant($"{i + 1}-{stem}");
            WholeFile.Write(Path.Combine(folder, name + "-marked.jpg"), PictureEncoder.ToJpeg(photos[i].Photo.Colour, Marks(photos[i])));
        }

        WholeFile.Write(Path.Combine(folder, Record), MeasurementRecord.Of(measured, provenance));
        WholeFile.Write(Path.Combine(folder, Page), MeasurementPage.Of(measured, provenance));
    }

    private static ImmutableArray<Mark> Marks(PhotoMeasurement measured) => measured.Measurement is not { } cell ? [] :
    [
        .. cell.Circles.Select(circle => new Mark(Polygon(circle.Ellipse), true, MarkInk.Letter)),
        .. cell.Scale.Points.SelectMany(point => new[]
        {
            new Mark([new PixelPoint(point.X - Cross, point.Y), new PixelPoint(point.X + Cross, point.Y)], false, MarkInk.Outline),
            new Mark([new PixelPoint(point.X, point.Y - Cross), new PixelPoint(point.X, point.Y + Cross)], false, MarkInk.Outline),
        }),
    ];

    private static ImmutableArray<PixelPoint> Polygon(PixelEllipse ellipse)
    {
        var (sin, cos) = Math.SinCos(ellipse.Rotation.Radians);
        return [.. Enumerable.Range(0, Corners).Select(i =>
        {
            var (y, x) = Math.SinCos(2 * Math.PI * i / Corners);
            var (along, across) = (x * ellipse.SemiMajor.Pixels, y * ellipse.SemiMinor.Pixels);
            return new PixelPoint(ellipse.Centre.X + (along * cos) - (across * sin), ellipse.Centre.Y + (along * sin) + (across * cos));
        })];
    }
}
