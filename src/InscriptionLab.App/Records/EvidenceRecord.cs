using System.Collections.Immutable;

namespace InscriptionLab.App.Records;

/// <summary>The weighing under three propositions: the house named had it cut; another had it cut in the house's time; it was cut for a modern decorative piece.</summary>
/// <param name="House">The house; null where no form is near.</param>
/// <param name="Rows">Rows that the list has for the house.</param>
/// <param name="Items">What was seen.</param>
/// <param name="Together">All items together, capped by the number of rows; null where nothing speaks.</param>
/// <param name="Years">The years.</param>
/// <param name="Second">A second house named on the piece; null where there is none.</param>
/// <param name="Remarks">What the recorded construction means beyond years.</param>
/// <param name="Prior">Odds beforehand as the user wrote them; null where none were given.</param>
/// <param name="Posterior">Probabilities for these odds; null where none were given.</param>
/// <param name="Decides">The observation that would decide most between the propositions; null where none would.</param>
/// <param name="Scale">The words for ratios, band by band.</param>
internal sealed record EvidenceRecord(
    string? House,
    int Rows,
    ImmutableArray<EvidenceItemRecord> Items,
    RatiosRecord? Together,
    YearsRecord Years,
    SecondNameRecord? Second,
    ImmutableArray<string> Remarks,
    string? Prior,
    PosteriorRecord? Posterior,
    string? Decides,
    ImmutableArray<string> Scale);
