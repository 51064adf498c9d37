using System.Collections.Immutable;

namespace InscriptionLab.App.Reports;

/// <summary>What is said with every finding.</summary>
internal static class Cautions
{
    /// <summary>Gets the sentences.</summary>
    internal static ImmutableArray<string> Sentences { get; } =
    [
        "Never point a telescope at the Sun: it blinds at once, and it burns through eyepieces.",
        "Do not polish, clean or fill an engraving to read it better: what is rubbed off does not come back. Change the light instead.",
        "Do not force a tube, a cap or a cell that does not move by itself.",
        "A finding is evidence about lettering in a photo. It is no certificate, and it says nothing about the people who made, owned or sold the piece.",
    ];
}
