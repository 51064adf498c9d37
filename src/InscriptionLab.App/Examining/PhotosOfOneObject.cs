using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Findings;

namespace InscriptionLab.App.Examining;

/// <summary>Looks whether photos that are said to show one object name one house.</summary>
internal static class PhotosOfOneObject
{
    /// <summary>Gives the houses that the photos name letter by letter, each once.</summary>
    internal static ImmutableArray<string> Houses(ImmutableArray<Examination> examined) =>
        [.. examined.Where(one => one.Finding.Outcome == FindingOutcome.Agrees).Select(one => one.Finding.Leading!.Form.Maker).Distinct(StringComparer.Ordinal)];

    /// <summary>Weighs each photo again where the photos name several houses, and says so with each.</summary>
    internal static ImmutableArray<Examination> Together(ImmutableArray<Examination> examined, Examiner examiner)
    {
        var houses = Houses(examined);
        return houses.Length < 2 ? examined : [.. examined.Select(one => one with { Evidence = examiner.Weigh(one, houses), Warnings = one.Warnings.Add(Sentence(houses)) })];
    }

    /// <summary>Gives the sentence for photos that name several houses, as the command line says it.</summary>
    internal static string Sentence(ImmutableArray<string> houses) => $"{Unlike(houses)} Use --as separate for several objects.";

    /// <summary>Gives what photos that name several houses may show.</summary>
    internal static string Unlike(ImmutableArray<string> houses) =>
        $"The photos name {string.Join(" and ", houses)}: they show several objects, or one with two names, or parts that may not belong together.";
}
