using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Advice;
using InscriptionLab.App.Examining;
using InscriptionLab.Gathering;

namespace InscriptionLab.App.Reports;

/// <summary>The photos to ask a seller for, after an examination.</summary>
internal static class Requests
{
    internal static ImmutableArray<string> Of(ImmutableArray<Examination> examinations, ImmutableArray<SetExamination> sets) => PhotoRequests.Of(
        [.. examinations.Select(examination => examination.Advice)],
        differentLamps: sets.Any(set => set.Kind == SetKind.Raking),
        turned: sets.Any(set => set.Kind == SetKind.Turns));
}
