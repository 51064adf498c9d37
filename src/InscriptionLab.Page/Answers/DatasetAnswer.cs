namespace InscriptionLab.Page.Answers;

/// <summary>How far a data set is, and what it holds.</summary>
/// <param name="Working">True while it is being made.</param>
/// <param name="Step">collecting, grouping, writing or packing; empty where nothing runs.</param>
/// <param name="Done">How many of the step are done.</param>
/// <param name="Total">How many there are; 0 where that is not known.</param>
/// <param name="Problem">Why there is none; null where nothing went wrong.</param>
/// <param name="Result">What it holds; null where there is none.</param>
/// <param name="Bytes">Size of its file.</param>
internal sealed record DatasetAnswer(bool Working, string Step, int Done, int Total, string? Problem, DatasetResultAnswer? Result, long Bytes);
