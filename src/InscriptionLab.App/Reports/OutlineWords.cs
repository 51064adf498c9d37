using InscriptionLab.Advice;
using InscriptionLab.Outcomes;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports;

/// <summary>How sharp the tube's outlines are, in one sentence.</summary>
internal static class OutlineWords
{
    /// <summary>Gives the sentence; null without a tube.</summary>
    internal static string? Of(LetteringMeasures measures) => measures.Outlines switch
    {
        Outcome<OutlineSharpness>.Found { Value: var outlines } =>
            Invariant($"The tube's outlines rise from 10 to 90 % of their light over {outlines.Rise.Pixels:0.0} px; half the contrast is left at {outlines.Mtf50:0.00} cycles a pixel (MTF50; {outlines.Places} places; {OutlineSharpness.Source})."),
        Outcome<OutlineSharpness>.Declined { Refusal: var refusal } => refusal.Sentence,
        _ => null,
    };
}
