using System;
using System.Collections.Immutable;
using System.Threading;
using InscriptionLab.App.Examining;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Readings;
using InscriptionLab.Strips;

namespace InscriptionLab.Page.Bench;

/// <summary>The stages as the page uses them.</summary>
/// <param name="Examining">The stages of an examination.</param>
/// <param name="ReadAt">Reads one line in a box that a person drew in the strip; null where nothing can be read there.</param>
/// <param name="ListKey">Name that changes whenever the reference list does.</param>
internal sealed record BenchStages(ExaminingStages Examining, Func<Photo, Strip, Quad, CancellationToken, LineReading?> ReadAt, string ListKey)
{
    /// <summary>Gets photo file to the number of pixels that its header declares; throws one sentence for a file that cannot be used.</summary>
    internal Func<string, long> PixelsOf { get; init; } = _ => 0;

    /// <summary>Gets a rim that a person drew, and the opening as a share of it, to the face of the ring.</summary>
    internal Func<Photo, PixelEllipse, double, Outcome<RingFace>> MarkRing { get; init; } = (_, _, _) => throw new InvalidOperationException("No ring was to be marked.");

    /// <summary>Gets photos of one piece, and where a person says that the lamp of a photo stood, to what they give together; nothing where the page reads photos one by one only.</summary>
    internal Func<ImmutableArray<Examination>, Func<Photo, StatedLamp?>, CancellationToken, ImmutableArray<SetExamination>> Together { get; init; } = (_, _, _) => [];

    /// <summary>Gives the pixels that a photo will fill; none where it cannot be used, of which its first stage tells.</summary>
    internal long Declared(string file)
    {
        try
        {
            return PixelsOf(file);
        }
        catch (InscriptionLabException)
        {
            return 0;
        }
    }
}
