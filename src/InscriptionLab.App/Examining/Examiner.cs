using System;
using System.Collections.Immutable;
using System.Threading;
using InscriptionLab.Outcomes;

namespace InscriptionLab.App.Examining;

/// <summary>The flow: photo, tube, strip, reading, comparison, finding. Each stage is timed; what a stage cannot tell becomes a warning and the flow goes on with what is left.</summary>
internal sealed class Examiner(ExaminingStages stages, TimeProvider clock)
{
    /// <summary>Examines one photo.</summary>
    /// <param name="file">File as the user named it.</param>
    /// <param name="cancel">Stops the flow between two stages.</param>
    /// <exception cref="InscriptionLabException">The file cannot be used.</exception>
    internal Examination Examine(string file, CancellationToken cancel)
    {
        var watch = new StageWatch(clock, cancel);
        var warnings = ImmutableArray.CreateBuilder<string>();

        var photo = watch.Run("photo", () => stages.Open(file));
        var tube = watch.Run("tube", () => FoundOrWarned(stages.FindTube(photo, cancel), warnings));
        var strip = watch.Run("strip", () => tube is null ? stages.LayFlat(photo, cancel) : stages.Unroll(photo, tube, cancel));
        var reading = watch.Run("reading", () => stages.Read(photo, strip, cancel));
        var comparison = watch.Run("comparison", () => stages.Compare(reading));
        var finding = watch.Run("finding", () => stages.Judge(comparison));

        warnings.AddRange(tube?.Notes ?? []);
        return new Examination(photo, tube, strip, reading, finding, warnings.ToImmutable(), watch.Times);
    }

    private static T? FoundOrWarned<T>(Outcome<T> outcome, ImmutableArray<string>.Builder warnings)
        where T : class
    {
        if (outcome is Outcome<T>.Found found)
        {
            return found.Value;
        }

        var refusal = ((Outcome<T>.Declined)outcome).Refusal;
        warnings.Add($"{refusal.Sentence} {refusal.Remedy}");
        return null;
    }
}
