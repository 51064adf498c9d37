using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Evidence;
using InscriptionLab.Page.Bench;

namespace InscriptionLab.Page.Answers;

/// <summary>The checklist of construction as the page asks it.</summary>
internal static class ChecklistMaker
{
    /// <summary>Gets every question, those of one part together: the checklist, the signature, measured values, odds beforehand.</summary>
    internal static ImmutableArray<QuestionAnswer> Questions { get; } =
    [
        .. ConstructionTable.Default.Rows.GroupBy(row => row.Feature).Select(rows => new QuestionAnswer(rows.Key, rows.First().Question, rows.First().Part, [.. rows.Select(Of)])).GroupBy(question => question.Part).SelectMany(part => part),
        new(ConstructionReader.Direction, "where the last letter of the signature stands", Signature, [.. ConstructionReader.Directions.Select(word => new ChoiceAnswer(word, Plain(word), string.Empty, string.Empty))]),
        new(ConstructionReader.Position, "the part that is signed, as the list calls it", Signature, []),
        .. MeasuredValue.Names.Select(name => new QuestionAnswer(name, Plain(name), "measured values", [])),
        new(PieceKnowledge.Odds, $"odds beforehand, which are yours: {PriorOdds.Grammar}", "odds", []),
    ];

    private const string Signature = "signature";

    private static ChoiceAnswer Of(ConstructionFeature row) => new(row.Observation, Plain(row.Observation), row.IsDated ? row.Years.ToString() : string.Empty, $"{row.Basis}: {row.Source}{(row.Remark.Length > 0 ? $". {row.Remark}" : string.Empty)}");

    /// <summary>A name as words: "outer_mm" is "outer, mm".</summary>
    private static string Plain(string name) => name.EndsWith("_mm", System.StringComparison.Ordinal) ? name[..^3] + ", mm" : name.Replace('_', ' ').Replace('-', ' ');
}
