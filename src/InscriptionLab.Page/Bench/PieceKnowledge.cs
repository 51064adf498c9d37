using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Text;
using InscriptionLab.Evidence;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Page.Bench;

/// <summary>What persons said of a piece beside its photos: answers of the checklist of construction, measured values, odds beforehand.</summary>
/// <param name="Answers">The latest answer to each question, in the order in which they were given.</param>
/// <param name="Construction">The same as the weighing takes it; null where nothing was answered.</param>
/// <param name="Prior">The odds; null where none were given.</param>
internal sealed record PieceKnowledge(ImmutableArray<Correction.Seen> Answers, ConstructionRecord? Construction, PriorOdds? Prior)
{
    /// <summary>Name under which odds beforehand are given.</summary>
    internal const string Odds = "odds";

    private static readonly ConstructionReader Reader = new(ConstructionTable.Default);

    /// <summary>Gets a name that changes whenever an answer does.</summary>
    internal string Key => string.Join(',', Answers.Select(answer => answer.Id));

    /// <summary>Tells whether there is such a question.</summary>
    internal static bool IsAsked(string feature) =>
        feature is Odds or ConstructionReader.Direction or ConstructionReader.Position
        || MeasuredValue.Names.Contains(feature)
        || ConstructionTable.Default.Features.Contains(feature, StringComparer.Ordinal);

    /// <summary>Tells whether the checklist has this question and takes this answer.</summary>
    internal static bool IsUnderstood(Correction.Seen answer)
    {
        try
        {
            return IsAsked(answer.Feature) && Of([answer]).Answers.Length == 1;
        }
        catch (InscriptionLabException)
        {
            return false;
        }
    }

    /// <summary>Gives what a piece's corrections say; a question answered again has its latest answer, one answered with nothing is open.</summary>
    /// <exception cref="InscriptionLabException">An answer is none of those that the checklist has.</exception>
    internal static PieceKnowledge Of(IEnumerable<Correction> corrections)
    {
        ImmutableArray<Correction.Seen> answers = [.. corrections.OfType<Correction.Seen>().GroupBy(answer => answer.Feature, StringComparer.Ordinal).Select(given => given.Last()).Where(answer => answer.Observation.Length > 0).OrderBy(answer => answer.Id)];
        var seen = answers.Where(answer => answer.Feature != Odds).ToList();
        var odds = answers.FirstOrDefault(answer => answer.Feature == Odds)?.Observation;
        return new PieceKnowledge(
            answers,
            seen.Count == 0 ? null : Reader.Read("the checklist", Encoding.UTF8.GetBytes("feature,observation\n" + string.Concat(seen.Select(answer => $"{Quoted(answer.Feature)},{Quoted(answer.Observation)}\n")))),
            odds is null ? null : PriorOdds.Parse(odds) ?? throw new InscriptionLabException($"The odds {odds} are not understood: {PriorOdds.Grammar}."));
    }

    /// <summary>Gives circumstances with what is known of the piece.</summary>
    internal Circumstances With(Circumstances seen) => seen with { Construction = Construction, Prior = Prior };

    private static string Quoted(string text) => $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
