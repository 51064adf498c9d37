using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Advice;
using InscriptionLab.App.Records;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>What limits a photo and how to take a better one, as parts of a paper.</summary>
internal static class AdviceBlocks
{
    /// <summary>Gives the parts; none where the photo was not judged.</summary>
    internal static IEnumerable<Block> Of(AdviceRecord? advice)
    {
        if (advice is null)
        {
            yield break;
        }

        yield return new Block.Heading("What limits this photo", 3);
        if (advice.Worst is null)
        {
            yield return new Block.Aside("Nothing that was measured limits the reading.");
        }

        if (advice.Limits.IsEmpty)
        {
            yield break;
        }

        yield return new Block.Grid(
            ["what limits it", "measured", "how to take a better one"],
            [.. advice.Limits.Select(limit => ImmutableArray.Create(limit.Sentence, AdviceFigures.Of(limit), string.Join(' ', limit.Steps)))]);
        yield return new Block.Aside(string.Join(' ', Adviser.Cautions));
    }

    /// <summary>Gives what to ask for; none where nothing is missing.</summary>
    internal static IEnumerable<Block> OfRequests(ImmutableArray<string> requests) =>
        requests.IsEmpty ? [] : [new Block.Heading("Photos to ask the seller for", 3), new Block.Sentences(requests)];
}
