using System.Collections.Immutable;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>A form of the list beside the reading.</summary>
/// <param name="Form">As the list spells it.</param>
/// <param name="Facts">Maker, status, years, source, as far as they are known.</param>
/// <param name="Ratio">How much less probable the picture is under this form than under the reading, in words; null where that is not known.</param>
/// <param name="Places">The form laid beside the reading; empty where only the differences are known.</param>
/// <param name="Differences">What differs, in sentences.</param>
internal sealed record PaperForm(string Form, string Facts, string? Ratio, ImmutableArray<AlignedPlace> Places, ImmutableArray<string> Differences);
