using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Cataloguing;
using InscriptionLab.Evidence;

namespace InscriptionLab.App.Cataloguing;

/// <summary>Keeps entries in the catalogue that the user named.</summary>
internal static class CatalogueKeeper
{
    /// <summary>Adds entries and gives a sentence on what became of them.</summary>
    /// <param name="address">File or connection string.</param>
    /// <param name="entries">What was worked out.</param>
    /// <param name="construction">What the user saw on the piece itself; null where nothing was said.</param>
    /// <param name="clock">The clock.</param>
    internal static string Keep(string address, IReadOnlyCollection<CatalogueEntry> entries, ConstructionRecord? construction, TimeProvider clock)
    {
        var catalogue = Catalogue.Open(address, clock);
        var added = 0;
        foreach (var entry in entries)
        {
            added += catalogue.Intake.Add(entry, Environment.UserName) ? 1 : 0;
        }

        ImmutableArray<ObservationEntry> seen = [.. construction?.Answers.Select(answer => ObservationMaker.Of(construction.Table, answer.Feature, answer.Observation, Environment.UserName, clock.GetUtcNow())) ?? []];
        foreach (var key in entries.Select(entry => catalogue.Search.KeyOfPhoto(entry.Photo.Sha256)).OfType<string>().Distinct(StringComparer.Ordinal))
        {
            catalogue.Desk.Observe(key, seen, [], Environment.UserName);
        }

        var known = entries.Count - added;
        return known == 0
            ? $"kept in {catalogue.Address.Name}: {added}"
            : $"kept in {catalogue.Address.Name}: {added}; there already, by the same program, models and list: {known}";
    }
}
