namespace InscriptionLab.Page.Answers;

/// <summary>One thing that tells of years.</summary>
/// <param name="What">The thing.</param>
/// <param name="Words">Its years in words.</param>
/// <param name="From">First year; null where open.</param>
/// <param name="To">Last year; null where open.</param>
/// <param name="Coverage">Share of such pieces that are taken to fall within the years.</param>
/// <param name="Source">What the years rest on.</param>
internal sealed record YearsStatementAnswer(string What, string Words, int? From, int? To, double Coverage, string Source);
