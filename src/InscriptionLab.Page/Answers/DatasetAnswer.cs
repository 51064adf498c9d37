using System.Linq;
using InscriptionLab.Exchange;
using InscriptionLab.Page.Keeping;

namespace InscriptionLab.Page.Answers;

/// <summary>How far a data set is, and what it holds.</summary>
/// <param name="Working">True while it is being made.</param>
/// <param name="Step">collecting, grouping, writing or packing; empty where nothing runs.</param>
/// <param name="Done">How many of the step are done.</param>
/// <param name="Total">How many there are; 0 where that is not known.</param>
/// <param name="Problem">Why there is none; null where nothing went wrong.</param>
/// <param name="Result">What it holds; null where there is none.</param>
/// <param name="Bytes">Size of its file.</param>
internal sealed record DatasetAnswer(bool Working, string Step, int Done, int Total, string? Problem, DatasetResultAnswer? Result, long Bytes)
{
    internal static DatasetAnswer Of(DatasetState state) => new(
        state.IsWorking,
        state.Progress is { } at ? WordOf(at.Step) : string.Empty,
        state.Progress?.Done ?? 0,
        state.Progress?.Total ?? 0,
        state.Problem,
        state.Result is { } built ? new DatasetResultAnswer(built.Marks, built.Letters, built.Objects, built.Groups, built.Corrected, [.. built.Parts.Select(part => new DatasetPartAnswer(part.Name, part.Marks, part.Objects))], built.Warnings) : null,
        state.Bytes);

    private static string WordOf(DatasetStep step) => step switch
    {
        DatasetStep.Collecting => "collecting",
        DatasetStep.Grouping => "grouping",
        DatasetStep.Writing => "writing",
        _ => "packing",
    };
}
