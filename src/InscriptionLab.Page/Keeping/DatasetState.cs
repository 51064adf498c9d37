using InscriptionLab.Exchange;

namespace InscriptionLab.Page.Keeping;

/// <summary>How far a data set is; a new one is made at every step and none is ever changed.</summary>
/// <param name="IsWorking">True while it is being made.</param>
/// <param name="Progress">The step; null before the first and after the last.</param>
/// <param name="Result">What it holds; null where none was made.</param>
/// <param name="Bytes">Size of its file.</param>
/// <param name="Problem">A sentence where it could not be made; null otherwise.</param>
internal sealed record DatasetState(bool IsWorking, DatasetProgress? Progress, DatasetResult? Result, long Bytes, string? Problem)
{
    internal static DatasetState None { get; } = new(false, null, null, 0, null);
}
