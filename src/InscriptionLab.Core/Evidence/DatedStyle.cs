namespace InscriptionLab.Evidence;

/// <summary>Years in which a lettering style was cut.</summary>
/// <param name="Style">roman, italic, script, blackletter, didone or sans.</param>
/// <param name="Years">The years.</param>
/// <param name="Coverage">Share of pieces in the style that fall within them.</param>
/// <param name="Basis">opinion or common practice.</param>
/// <param name="Source">What the years rest on.</param>
public sealed record DatedStyle(string Style, DateInterval Years, double Coverage, string Basis, string Source);
