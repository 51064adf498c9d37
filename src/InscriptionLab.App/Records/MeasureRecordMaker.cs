using System;
using System.Linq;
using InscriptionLab.App.Measuring;
using InscriptionLab.Cells;
using InscriptionLab.Measures;

namespace InscriptionLab.App.Records;

/// <summary>Turns a measurement into the record that is written as JSON; rounds, and changes nothing else.</summary>
internal static class MeasureRecordMaker
{
    /// <summary>Digits after the point of millimetres: a tenth of a micrometre, below every uncertainty.</summary>
    private const int MillimetreDigits = 4;

    private const int AngleDigits = 2;

    /// <summary>Digits after the point of circles without a role.</summary>
    private const int OtherDigits = 2;

    private const int ScaleDigits = 5;

    /// <summary>Digits after the point of relative uncertainties.</summary>
    private const int RelativeDigits = 6;

    internal static MeasureRecord Of(PhotoMeasurement measured) => new(
        measured.Photo.File,
        measured.Measurement is { } cell ? Of(cell.Scale) : null,
        [.. (measured.Measurement?.Circles ?? []).Select(Of)],
        measured.Warnings)
    {
        Others = [.. (measured.Measurement?.Others ?? []).Select(circle => new OtherCircleRecord(Math.Round(circle.Diameter.Millimetres, OtherDigits), Math.Round(circle.SeenShare, OtherDigits), Of(circle.Ellipse)))],
    };

    private static ScaleRecord Of(ScaleFound scale) => new(
        scale.Source,
        Math.Round(scale.AtCell.PixelsPerMillimetre, ScaleDigits),
        Math.Round(scale.AtCell.RelativeUncertainty, RelativeDigits));

    private static CircleRecord Of(CellCircle circle) => new(
        Words.For(circle.Role),
        Math.Round(circle.Diameter.Value.Millimetres, MillimetreDigits),
        Math.Round(circle.Diameter.ExpandedUncertainty.Millimetres, MillimetreDigits),
        circle.Diameter.CoverageFactor,
        Of(circle.Ellipse));

    internal static EllipseRecord Of(PixelEllipse ellipse) => new(
        RecordMaker.Of(ellipse.Centre),
        RecordMaker.Of(new PixelPoint(ellipse.SemiMajor.Pixels, ellipse.SemiMinor.Pixels)),
        Math.Round(ellipse.Rotation.Degrees, AngleDigits));
}
