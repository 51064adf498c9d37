using System;
using System.Collections.Immutable;
using System.Globalization;
using InscriptionLab.App;
using InscriptionLab.App.Measuring;
using InscriptionLab.App.Reports;
using InscriptionLab.Page.Bench;
using InscriptionLab.References;

namespace InscriptionLab.Page;

/// <summary>What the page works with: the stages, the reference list and the facts of the program. The list can be changed while the page is open.</summary>
internal sealed class Workshop
{
    private readonly Func<ReferenceList, string, BenchStages> _stagesFor;
    private volatile Shelf _shelf;
    private int _lists;

    /// <summary>Takes the program's own stages.</summary>
    internal Workshop(Composition composition, ReferenceList references, bool isDemonstration)
        : this((list, key) => StagesOf(composition, list, key), references, isDemonstration, composition.Clock)
    {
        Models = composition.Models;
        Options = composition.Options;
        Measurer = composition.Measurer();
    }

    /// <summary>Takes any stages.</summary>
    internal Workshop(Func<ReferenceList, string, BenchStages> stagesFor, ReferenceList references, bool isDemonstration, TimeProvider clock)
    {
        _stagesFor = stagesFor;
        Clock = clock;
        _shelf = new Shelf(references, isDemonstration, stagesFor(references, "list0"));
    }

    internal TimeProvider Clock { get; }

    internal ImmutableArray<ModelFact> Models { get; private init; } = [];

    internal ImmutableArray<StageOptions> Options { get; private init; } = [];

    /// <summary>Gets the stages of a measurement; null where this page cannot measure.</summary>
    internal Measurer? Measurer { get; init; }

    internal BenchStages Stages => _shelf.Stages;

    internal ReferenceList References => _shelf.References;

    /// <summary>Gets a value indicating whether the list is the demonstration list of invented makers.</summary>
    internal bool IsDemonstration => _shelf.IsDemonstration;

    /// <summary>Puts another list on the shelf.</summary>
    internal void Use(ReferenceList references, bool isDemonstration)
    {
        var key = string.Create(CultureInfo.InvariantCulture, $"list{System.Threading.Interlocked.Increment(ref _lists)}");
        _shelf = new Shelf(references, isDemonstration, _stagesFor(references, key));
    }

    private static BenchStages StagesOf(Composition composition, ReferenceList list, string key)
    {
        var stages = composition.Stages(list);
        return new BenchStages(stages, composition.ReadAt, key)
        {
            PixelsOf = composition.PixelsOf,
            MarkRing = (photo, rim, opening) => composition.MarkRing(photo, rim, opening),
            Together = (members, lamps, cancel) => composition.SetExaminer(stages, lamps).Examine(members, null, cancel),
        };
    }

    private sealed record Shelf(ReferenceList References, bool IsDemonstration, BenchStages Stages);
}
