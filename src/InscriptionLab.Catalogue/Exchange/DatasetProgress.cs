namespace InscriptionLab.Exchange;

/// <summary>How far the making of a data set is.</summary>
/// <param name="Step">What is being done.</param>
/// <param name="Done">How many of the step are done.</param>
/// <param name="Total">How many there are; 0 where the step cannot be counted.</param>
public sealed record DatasetProgress(DatasetStep Step, int Done, int Total);
