using System;
using InscriptionLab.App.Examining;
using InscriptionLab.Findings;
using InscriptionLab.Outcomes;
using InscriptionLab.Readings;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Photos;
using InscriptionLab.Vision.Strips;

namespace InscriptionLab.App;

/// <summary>Builds the program by <c>new</c>, in one place. Owns what must be closed at the end.</summary>
internal sealed class Composition : IDisposable
{
    private readonly PhotoReader _photoReader = new(new PhotoLimits());
    private readonly Unroller _unroller = new();

    /// <summary>Gets the clock.</summary>
    internal TimeProvider Clock { get; } = TimeProvider.System;

    public void Dispose()
    {
    }

    /// <summary>Builds the flow of an examination.</summary>
    internal Examiner Examiner() => new(
        new ExaminingStages(
            Open: _photoReader.Read,
            FindTube: (_, _) => new Outcome<Tube>.Declined(new Refusal("tube", "No tube was looked for: this build has no tube finder.", "Use a later build.")),
            Unroll: (photo, tube, _) => _unroller.Run(photo, tube),
            LayFlat: (photo, _) => _unroller.Flat(photo),
            FindLines: (_, _) => [],
            Read: (_, _) => new Reading("none", [], []),
            Judge: (_, _, _) => new Finding(FindingOutcome.NothingRead, [], ["This build reads nothing yet."], [], [])),
        Clock);
}
