using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Advice;
using InscriptionLab.App.Records;
using InscriptionLab.App.Reports;

namespace InscriptionLab.Page.Answers;

/// <summary>What limits a photo and how to take a better one.</summary>
/// <param name="Limited">True where something limits the reading, and not only the measuring.</param>
/// <param name="Limits">What limits it, the worst first.</param>
/// <param name="Cautions">What not to do for a better photo.</param>
internal sealed record AdviceAnswer(bool Limited, ImmutableArray<LimitAnswer> Limits, ImmutableArray<string> Cautions)
{
    internal static AdviceAnswer Of(PhotoAdvice advice) => new(
        advice.Worst is not null,
        [.. advice.Limits.Select(limit => new LimitAnswer(Words.For(limit.Kind), limit.Sentence, AdviceFigures.Of(limit), limit.Source, CommandWords.Without(limit.Steps)))],
        advice.Cautions);
}
