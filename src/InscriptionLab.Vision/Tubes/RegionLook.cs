using System;

namespace InscriptionLab.Vision.Tubes;

/// <summary>What the network sees between two outlines and at them; every figure is a mean of probabilities, 0 to 1, or a difference of two.</summary>
/// <param name="Inside">How surely plain tube wall is between the outlines.</param>
/// <param name="StepUpper">How much more surely just inside the upper outline than just beyond it.</param>
/// <param name="StepLower">The same for the lower outline.</param>
/// <param name="OutlineUpper">How surely the upper line is an outline.</param>
/// <param name="OutlineLower">How surely the lower line is one.</param>
internal readonly record struct RegionLook(double Inside, double StepUpper, double StepLower, double OutlineUpper, double OutlineLower)
{
    /// <summary>The network must see so much less of the wall just beyond an outline than just inside it: on the drawn scenes and rendered photos named below 154 of 156 right pairs have more.</summary>
    private const double SmallestStep = 0.15;

    /// <summary>Gets a value indicating whether the wall goes on beyond one of the outlines.</summary>
    internal bool GoesOn => Math.Min(StepUpper, StepLower) < SmallestStep;

    /// <summary>
    /// Gives the score of a pair of lines: a linear score whose weights make the right pair win over all other pairs of its photo as often as possible
    /// (conditional logistic regression on 119 drawn scenes and, counted three times, 37 rendered photos; with each fifth judged by the other four, 99 of 119 and 32 of 37 right).
    /// </summary>
    /// <param name="edges">Evidence of both lines over their common length, 0 to 2.</param>
    /// <param name="against">Evidence against them, likewise.</param>
    /// <param name="length">Share of the length of the picture that they run over.</param>
    internal double Score(double edges, double against, double length) =>
        (1.11 * length * edges) - (0.41 * against) - (0.43 * length)
        + (0.5 * Inside) + (0.3 * Math.Min(StepUpper, StepLower)) + (0.64 * Math.Min(OutlineUpper, OutlineLower));
}
