using InscriptionLab.Comparison;

namespace InscriptionLab.App.Reports;

/// <summary>One place of a form laid beside a reading.</summary>
/// <param name="Attested">The form's letter; empty where the reading has one too many.</param>
/// <param name="Read">The letter as read; empty where it is missing.</param>
/// <param name="Difference">How the two differ, or null where they are alike.</param>
/// <param name="Agreement">Where in the reading the letter stands that is like the form's; null where the two differ or the place is a space.</param>
internal sealed record AlignedPlace(string Attested, string Read, LetterDifference? Difference, LetterDifference? Agreement = null);
