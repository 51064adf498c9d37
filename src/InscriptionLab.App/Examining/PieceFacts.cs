using System;
using System.IO;
using InscriptionLab.Evidence;
using InscriptionLab.Outcomes;

namespace InscriptionLab.App.Examining;

/// <summary>What the user says of a piece: a record of its construction, a checklist with other years, odds beforehand.</summary>
internal static class PieceFacts
{
    /// <summary>Loads it.</summary>
    /// <param name="construction">File of the record; null for none.</param>
    /// <param name="checklist">File of the checklist; null for the program's own.</param>
    /// <param name="prior">The odds as written; null for none.</param>
    /// <exception cref="InscriptionLabException">A file cannot be read or is none of its kind, or the odds are not understood.</exception>
    internal static Circumstances Load(string? construction, string? checklist, string? prior)
    {
        var table = checklist is null ? ConstructionTable.Default : ConstructionTable.Read(checklist, Bytes(checklist, "checklist"));
        return Circumstances.None with
        {
            Construction = construction is null
                ? (checklist is null ? null : new ConstructionRecord("none", table, []))
                : new ConstructionReader(table).Read(construction, Bytes(construction, "construction record")),
            Prior = prior is null ? null : PriorOdds.Parse(prior) ?? throw new InscriptionLabException(Complaint(prior)!),
        };
    }

    /// <summary>Says what is wrong with odds; null where nothing is, or none are given.</summary>
    internal static string? Complaint(string? prior) => prior is not null && PriorOdds.Parse(prior) is null ? $"--prior {prior} is not understood: {PriorOdds.Grammar}." : null;

    internal static byte[] Bytes(string file, string kind)
    {
        if (!File.Exists(file))
        {
            throw new InscriptionLabException($"{file}: there is no such {kind}; give the name of a CSV file.");
        }

        try
        {
            return File.ReadAllBytes(file);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new InscriptionLabException($"{file}: the {kind} cannot be read; check that you may open it.", problem);
        }
    }
}
