namespace InscriptionLab.App.Records;

/// <summary>One thing that tells of years.</summary>
/// <param name="What">The thing.</param>
/// <param name="Kind">form, address, address-of-others, second-name, wording, style or construction.</param>
/// <param name="From">First year; null where open.</param>
/// <param name="To">Last year; null where open.</param>
/// <param name="Coverage">Share of such pieces that are taken to fall within the years.</param>
/// <param name="Source">What the years rest on.</param>
internal sealed record DateStatementRecord(string What, string Kind, int? From, int? To, double Coverage, string Source);
