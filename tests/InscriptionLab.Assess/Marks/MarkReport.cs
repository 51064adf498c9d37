using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using InscriptionLab.Likeness;

namespace InscriptionLab.Assess.Marks;

/// <summary>How well likeness finds the same mark in another photo of it, among all lines of the folder.</summary>
internal static class MarkReport
{
    internal static string Of(IReadOnlyList<MarkCase> cases)
    {
        var index = new MarkIndex([.. cases.Select((item, number) => KeyValuePair.Create<long, ReadOnlyMemory<sbyte>>(number, item.Embedding))]);
        var found = cases.Select((item, number) => (Item: item, Ranked: Ranked(cases, index, number))).ToList();
        var same = found.Select(query => AveragePrecision(query.Ranked, other => IsSame(query.Item, other))).Where(value => value is not null).ToList();
        var first = found.Where(query => query.Ranked.Any(other => IsSame(query.Item, other))).ToList();
        var words = found.Select(query => AveragePrecision([.. query.Ranked.Where(other => other.Piece != query.Item.Piece)], other => other.Words == query.Item.Words)).Where(value => value is not null).ToList();
        var culture = CultureInfo.InvariantCulture;
        return string.Create(culture, $"{cases.Count} lines of {cases.Select(item => item.File).Distinct(StringComparer.Ordinal).Count()} photos, {cases.Select(item => (item.Piece, item.Line)).Distinct().Count()} different marks.\n")
            + string.Create(culture, $"The same mark in another photo, among all {cases.Count - 1} other lines: mean average precision {Mean(same):0.000} over {same.Count} questions; the likest line is the same mark in {first.Count(query => IsSame(query.Item, query.Ranked[0]))} of {first.Count}.\n")
            + string.Create(culture, $"The same words on another piece, photos of the same piece left out: mean average precision {Mean(words):0.000} over {words.Count} questions.\n");
    }

    private static bool IsSame(MarkCase one, MarkCase other) => one.Piece == other.Piece && one.Line == other.Line;

    private static List<MarkCase> Ranked(IReadOnlyList<MarkCase> cases, MarkIndex index, int number) =>
        [.. index.Nearest(cases[number].Embedding, cases.Count).Where(like => like.Id != number).Select(like => cases[(int)like.Id])];

    private static double Mean(List<double?> values) => values.Count == 0 ? double.NaN : values.Average()!.Value;

    /// <summary>The mean of the precisions at each right answer; null where there is none.</summary>
    private static double? AveragePrecision(List<MarkCase> ranked, Func<MarkCase, bool> isRight)
    {
        var (right, sum) = (0, 0.0);
        for (var place = 0; place < ranked.Count; place++)
        {
            if (isRight(ranked[place]))
            {
                right++;
                sum += (double)right / (place + 1);
            }
        }

        return right == 0 ? null : sum / right;
    }
}
