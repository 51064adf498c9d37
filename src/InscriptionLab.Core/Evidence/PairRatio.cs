namespace InscriptionLab.Evidence;

/// <summary>How much better one proposition explains what was seen than another.</summary>
/// <param name="First">The one.</param>
/// <param name="Second">The other.</param>
/// <param name="Log10Ratio">Decimal logarithm of P(seen | first) over P(seen | second), capped.</param>
/// <param name="IsCapped">True where the cap cut it off.</param>
public sealed record PairRatio(Proposition First, Proposition Second, double Log10Ratio, bool IsCapped);
