using System;
using System.Collections.Immutable;
using System.Threading;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Tubes;

namespace InscriptionLab.App.Examining;

/// <summary>The flow: photo, tube, strip, reading, comparison, finding. Each stage is timed; what a stage cannot tell becomes a warning and the flow goes on with what is left.</summary>
internal sealed class Examiner(ExaminingStages stages, TimeProvider clock)
{
    /// <summary>Said where the tube laid flat shows no lettering and the photo itself does.</summary>
    internal const string ReadFromPhoto =
        "No lettering was made out on the tube laid flat, so the photo was read as it is: letters away from the middle of the tube are narrower there than on the metal.";

    /// <summary>Examines one photo.</summary>
    /// <param name="file">File as the user named it.</param>
    /// <param name="cancel">Stops the flow between two stages.</param>
    /// <exception cref="InscriptionLabException">The file cannot be used.</exception>
    internal Examination Examine(string file, CancellationToken cancel)
    {
        var watch = new StageWatch(clock, cancel);
        var warnings = ImmutableArray.CreateBuilder<string>();

        var photo = watch.Run("photo", () => stages.Open(file));
        var tubes = watch.Run("tube", () => FoundOrWarned(stages.FindTubes(photo, cancel), warnings));
        var surface = Read(photo, tubes, warnings, watch, cancel);
        var comparison = watch.Run("comparison", () => stages.Compare(surface.Reading));
        var finding = watch.Run("finding", () => stages.Judge(comparison));

        warnings.AddRange(surface.Tube?.Notes ?? []);
        return new Examination(photo, surface.Tube, surface.Strip, surface.Reading, finding, warnings.ToImmutable(), watch.Times);
    }

    /// <summary>Lays surfaces flat and reads them until one shows lettering: the tubes, the likeliest first, then the photo as it is.</summary>
    private ReadSurface Read(Photo photo, ImmutableArray<Tube> tubes, ImmutableArray<string>.Builder warnings, StageWatch watch, CancellationToken cancel)
    {
        ReadSurface? bare = null;
        foreach (var tube in tubes)
        {
            var strip = watch.Run("strip", () => stages.Unroll(photo, tube, cancel));
            var reading = watch.Run("reading", () => stages.Read(photo, strip, cancel));
            if (!reading.Lines.IsEmpty)
            {
                return new ReadSurface(tube, strip, reading);
            }

            bare ??= new ReadSurface(tube, strip, reading);
        }

        var flat = watch.Run("strip", () => stages.LayFlat(photo, cancel));
        var asItIs = watch.Run("reading", () => stages.Read(photo, flat, cancel));
        if (bare is not null && asItIs.Lines.IsEmpty)
        {
            return bare;
        }

        if (bare is not null)
        {
            warnings.Add(ReadFromPhoto);
        }

        return new ReadSurface(bare?.Tube, flat, asItIs);
    }

    private static ImmutableArray<T> FoundOrWarned<T>(Outcome<ImmutableArray<T>> outcome, ImmutableArray<string>.Builder warnings)
    {
        if (outcome is Outcome<ImmutableArray<T>>.Found found)
        {
            return found.Value;
        }

        var refusal = ((Outcome<ImmutableArray<T>>.Declined)outcome).Refusal;
        warnings.Add($"{refusal.Sentence} {refusal.Remedy}");
        return [];
    }
}
