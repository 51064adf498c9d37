using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>One near form.</summary>
/// <param name="Form">As the list spells it.</param>
/// <param name="Maker">The house.</param>
/// <param name="Status">attested, period-copy or reproduction.</param>
/// <param name="Style">Style of its lettering; null where unknown.</param>
/// <param name="From">First year of use.</param>
/// <param name="To">Last year of use.</param>
/// <param name="Address">Address that goes with it.</param>
/// <param name="Source">Where the row comes from.</param>
/// <param name="Note">Remarks.</param>
/// <param name="Log10Ratio">Decimal logarithm of P(picture | this form) over P(picture | free reading); null where unknown.</param>
/// <param name="Agreement">Probability that every letter is cut as the form has it.</param>
/// <param name="Places">Form and reading side by side.</param>
/// <param name="Differences">The differences in words.</param>
internal sealed record NearestAnswer(
    string Form,
    string Maker,
    string Status,
    string? Style,
    int? From,
    int? To,
    string? Address,
    string? Source,
    string? Note,
    double? Log10Ratio,
    double Agreement,
    ImmutableArray<PlaceAnswer> Places,
    ImmutableArray<string> Differences);
