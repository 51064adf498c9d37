using System;
using System.Threading;
using InscriptionLab.Cells;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;

namespace InscriptionLab.App.Measuring;

/// <summary>The flow of a measurement: photo, measured cell. What the photo cannot tell becomes a warning.</summary>
/// <param name="open">File to photo; throws one sentence for a file that cannot be used.</param>
/// <param name="measure">Photo to measured cell.</param>
internal sealed class Measurer(Func<string, Photo> open, Func<Photo, MeasureRequest, CancellationToken, Outcome<CellMeasurement>> measure)
{
    /// <summary>Measures one photo.</summary>
    /// <exception cref="InscriptionLabException">The file cannot be used.</exception>
    internal PhotoMeasurement Measure(string file, MeasureRequest request, CancellationToken cancel)
    {
        var photo = open(file);
        return measure(photo, request, cancel) switch
        {
            Outcome<CellMeasurement>.Found found => new PhotoMeasurement(photo, found.Value, found.Value.Warnings),
            Outcome<CellMeasurement>.Declined declined => new PhotoMeasurement(photo, null, [$"{declined.Refusal.Sentence} {declined.Refusal.Remedy}"]),
            _ => throw new InvalidOperationException("An outcome is found or declined."),
        };
    }
}
