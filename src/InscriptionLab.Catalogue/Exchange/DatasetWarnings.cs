using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;

namespace InscriptionLab.Exchange;

/// <summary>Says in sentences what a data set lacks, so that nobody has to find it out from the tables.</summary>
internal static class DatasetWarnings
{
    /// <summary>Objects below which a part tells little: with fewer, one object more or less moves every figure (common practice).</summary>
    private const int FewObjects = 5;

    internal static ImmutableArray<string> Of(DatasetRequest request, IReadOnlyList<DatasetMark> marks, ImmutableArray<DatasetPart> parts, int photosWithoutHash)
    {
        var warnings = ImmutableArray.CreateBuilder<string>();
        void Add(bool holds, FormattableString sentence)
        {
            if (holds)
            {
                warnings.Add(sentence.ToString(CultureInfo.InvariantCulture));
            }
        }

        Add(request.Licence is null, $"No licence was stated: ask who owns the photos before the data set goes to anyone, and build it again with the licence.");
        foreach (var part in parts)
        {
            Add(part.Objects == 0, $"The part {part.Name} is empty: take more objects, or part them by another number.");
            Add(part.Objects is > 0 and < FewObjects, $"The part {part.Name} has {Count(part.Objects, "object")} only; figures measured on it will say little.");
        }

        Add(marks.All(mark => mark.Line.Correction is null), $"No line was corrected by a person: every transcription is what the program read, and may be wrong.");
        Add(photosWithoutHash > 0, $"{Count(photosWithoutHash, "photo")} could not be checked for near duplicates; objects that share such a photo may lie in two parts.");
        if (request.Examinations is { } wanted)
        {
            var left = wanted.Count - marks.Select(mark => mark.Photo.Reading!.Number).Distinct().Count();
            Add(left > 0, $"{Count(left, "examination")} of those chosen gave nothing: an older one of a photo, one of several photos together, a measurement, or one without a picture of a line.");
        }

        return warnings.ToImmutable();
    }

    private static string Count(int number, string what) => string.Create(CultureInfo.InvariantCulture, $"{number} {what}{(number == 1 ? string.Empty : "s")}");
}
