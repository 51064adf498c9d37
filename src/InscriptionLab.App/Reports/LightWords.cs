using InscriptionLab.Advice;
using InscriptionLab.Outcomes;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports;

/// <summary>From which side the light of a photo comes, in one sentence.</summary>
internal static class LightWords
{
    /// <summary>Gives the sentence; null where the light was not looked for.</summary>
    internal static string? Of(LetteringMeasures measures) => measures.Light switch
    {
        Outcome<LampSight>.Found { Value: var lamp } => Invariant($"It seems to come from {lamp.Words} (standard uncertainty {lamp.Uncertainty.Degrees:0} degrees; told by the {lamp.Basis})."),
        Outcome<LampSight>.Declined { Refusal: var refusal } => refusal.Sentence,
        _ => null,
    };
}
