using System;
using System.Linq;
using System.Threading;

namespace InscriptionLab.Page.Bench;

/// <summary>Runs the stages of one photo one after the other and tells how far they are. What an earlier run gave stays to be seen until the new result is there.</summary>
/// <param name="before">State after the earlier run.</param>
/// <param name="clock">Times the stages.</param>
/// <param name="tell">Told every new state.</param>
/// <param name="cancel">Stops between two stages.</param>
internal sealed class StageRun(PhotoState before, TimeProvider clock, Action<PhotoState> tell, CancellationToken cancel)
{
    /// <summary>Gets the state so far.</summary>
    internal PhotoState State { get; private set; } = before with { Stages = PhotoState.Untouched.Stages, Problem = null };

    /// <summary>Runs a stage that always ends in the same way.</summary>
    internal T Do<T>(string stage, Func<(T Result, bool WasKept)> run, StageStatus end) => Do(stage, run, _ => end);

    /// <summary>Runs a stage.</summary>
    /// <param name="stage">Its name.</param>
    /// <param name="run">Gives the result, and whether it was kept from before.</param>
    /// <param name="end">How the stage ended.</param>
    internal T Do<T>(string stage, Func<(T Result, bool WasKept)> run, Func<T, StageStatus> end)
    {
        cancel.ThrowIfCancellationRequested();
        var earlier = State.Stages[PhotoState.StageNames.IndexOf(stage)].Elapsed;
        Set(new StageProgress(stage, StageStatus.Running, earlier));
        tell(State);
        var start = clock.GetTimestamp();
        var (result, wasKept) = run();
        TimeSpan? took = wasKept ? null : clock.GetElapsedTime(start);
        Set(new StageProgress(stage, end(result), earlier is null ? took : earlier + (took ?? TimeSpan.Zero)));
        return result;
    }

    /// <summary>Says that a stage is done that was left running.</summary>
    internal void End(string stage) => Change(stage, StageStatus.Done);

    /// <summary>Says that a person had a hand in what a stage gave.</summary>
    internal void ByHand(string stage) => Change(stage, StageStatus.ByHand);

    /// <summary>Adds what a stage gave to the state.</summary>
    internal void Note(Func<PhotoState, PhotoState> add)
    {
        State = add(State);
        tell(State);
    }

    /// <summary>Ends the run with a sentence.</summary>
    internal void Fail(string problem)
    {
        var stages = State.Stages.Select(stage => stage.Status == StageStatus.Running ? stage with { Status = StageStatus.Failed } : stage);
        State = State with { Problem = problem, Stages = [.. stages] };
        tell(State);
    }

    private void Change(string stage, StageStatus status)
    {
        State = State.With(stage, State.Stages[PhotoState.StageNames.IndexOf(stage)] with { Status = status });
        tell(State);
    }

    private void Set(StageProgress progress) => State = State.With(progress.Stage, progress);
}
