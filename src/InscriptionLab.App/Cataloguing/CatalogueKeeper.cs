using System;
using System.Collections.Generic;
using InscriptionLab.Cataloguing;

namespace InscriptionLab.App.Cataloguing;

/// <summary>Keeps entries in the catalogue that the user named.</summary>
internal static class CatalogueKeeper
{
    /// <summary>Adds entries and gives a sentence on what became of them.</summary>
    internal static string Keep(string address, IReadOnlyCollection<CatalogueEntry> entries, TimeProvider clock)
    {
        var catalogue = Catalogue.Open(address, clock);
        var added = 0;
        foreach (var entry in entries)
        {
            added += catalogue.Intake.Add(entry, Environment.UserName) ? 1 : 0;
        }

        var known = entries.Count - added;
        return known == 0
            ? $"kept in {catalogue.Address.Name}: {added}"
            : $"kept in {catalogue.Address.Name}: {added}; there already, by the same program, models and list: {known}";
    }
}
