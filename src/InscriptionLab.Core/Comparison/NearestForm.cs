using System.Collections.Immutable;
using InscriptionLab.References;

namespace InscriptionLab.Comparison;

/// <summary>A form of the reference list near to what was read, with every difference.</summary>
/// <param name="Form">The row of the list.</param>
/// <param name="LineIndex">Line of the reading it was compared with, from 0.</param>
/// <param name="Distance">Weighted edit distance, in letters.</param>
/// <param name="Differences">Differences in reading order; empty where the two are alike letter by letter.</param>
/// <param name="LogLikelihoodRatio">Natural logarithm of P(picture | this form is cut) over P(picture | the free reading is cut), zero or less; null where the reader gives no posteriors.</param>
public sealed record NearestForm(
    ReferenceForm Form,
    int LineIndex,
    double Distance,
    ImmutableArray<LetterDifference> Differences,
    double? LogLikelihoodRatio);
