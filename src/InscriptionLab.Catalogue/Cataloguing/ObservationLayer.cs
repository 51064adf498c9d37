using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using InscriptionLab.Cataloguing.Rows;

namespace InscriptionLab.Cataloguing;

/// <summary>The layer of what persons saw on an object: to each question the latest answer stands, and every earlier one stays with who gave it.</summary>
internal static class ObservationLayer
{
    /// <summary>Lays answers over those that stand.</summary>
    /// <param name="context">The catalogue.</param>
    /// <param name="objectId">The object.</param>
    /// <param name="seen">Answers; one that stands already changes nothing.</param>
    /// <param name="open">Questions that are open again.</param>
    /// <param name="now">The time.</param>
    /// <returns>The step as it can be taken back; null where nothing changed.</returns>
    internal static Step? Lay(CatalogueContext context, long objectId, IReadOnlyCollection<ObservationEntry> seen, IReadOnlyCollection<string> open, DateTimeOffset now)
    {
        var standing = context.Observations.Where(row => row.ObjectId == objectId && row.WithdrawnAt == null).ToList();
        var fresh = seen.Where(entry => !standing.Any(row => row.Feature == entry.Feature && row.Answer == entry.Answer)).ToList();
        var gone = standing.Where(row => fresh.Any(entry => entry.Feature == row.Feature) || open.Contains(row.Feature)).ToList();
        gone.ForEach(row => row.WithdrawnAt = now);
        var added = fresh.ConvertAll(entry => new ObservationRow
        {
            ObjectId = objectId,
            Feature = entry.Feature,
            Answer = entry.Answer,
            FromYear = entry.FromYear,
            ToYear = entry.ToYear,
            Source = entry.Source,
            ByWhom = entry.By,
            MadeAt = entry.MadeAt,
        });
        context.Observations.AddRange(added);
        context.SaveChanges();
        return added.Count + gone.Count == 0 ? null : new Step([.. added.Select(row => row.Id)], [.. gone.Select(row => row.Id)]);
    }

    /// <summary>Takes a step back.</summary>
    internal static void TakeBack(CatalogueContext context, string step, DateTimeOffset now)
    {
        var (added, withdrawn) = JsonSerializer.Deserialize<Step>(step)!;
        context.Observations.Where(row => added.Contains(row.Id)).ToList().ForEach(row => row.WithdrawnAt = now);
        context.Observations.Where(row => withdrawn.Contains(row.Id)).ToList().ForEach(row => row.WithdrawnAt = null);
    }

    /// <summary>Gives the answers that stand, in the order in which they were given.</summary>
    internal static IEnumerable<ObservationEntry> Standing(IEnumerable<ObservationRow> rows) => rows
        .Where(row => row.WithdrawnAt is null)
        .OrderBy(row => row.Id)
        .Select(row => new ObservationEntry(row.Feature, row.Answer, row.FromYear, row.ToYear, row.Source, row.ByWhom, row.MadeAt));

    /// <summary>One step.</summary>
    /// <param name="Added">Numbers of the rows that were added.</param>
    /// <param name="Withdrawn">Numbers of the rows that were withdrawn.</param>
    internal sealed record Step(long[] Added, long[] Withdrawn);
}
