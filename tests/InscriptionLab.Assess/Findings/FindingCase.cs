using System;
using InscriptionLab.Findings;

namespace InscriptionLab.Assess.Findings;

/// <summary>The finding on one photo, or on one set read together, beside what is cut.</summary>
/// <param name="Photo">File, or name of the set.</param>
/// <param name="Group">What the lettering is in truth.</param>
/// <param name="Cut">The name as cut.</param>
/// <param name="Attested">The name as the list has it.</param>
/// <param name="XHeight">Height of the small letters in pixels, or of the capitals where there are no others.</param>
/// <param name="Outcome">The outcome.</param>
/// <param name="Form">Form of the list that the outcome turns on; null where none.</param>
/// <param name="Named">That form with the letters in it that the finding says are other; null where no form is near.</param>
internal sealed record FindingCase(string Photo, FindingGroup Group, string Cut, string Attested, double XHeight, FindingOutcome Outcome, string? Form, string? Named)
{
    /// <summary>Gets a value indicating whether the finding says that the spelling differs from that of the house.</summary>
    internal bool IsFlagged => Outcome == FindingOutcome.Differs;

    /// <summary>Gets a value indicating whether it says so of the right form and names the letters that differ and no others.</summary>
    internal bool IsNamed => IsFlagged && Same(Form, Attested) && Same(Named, Cut);

    private static bool Same(string? first, string second) => string.Equals(Bare(first ?? string.Empty), Bare(second), StringComparison.OrdinalIgnoreCase);

    private static string Bare(string text) => string.Concat(text.Split(' ', '.', ',', '-'));
}
