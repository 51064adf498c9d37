using System.Collections.Immutable;
using System.Linq;

namespace InscriptionLab.Advice;

/// <summary>What limits a photo and how to take a better one.</summary>
/// <param name="Measures">What was measured.</param>
/// <param name="Limits">What limits it, the worst first; what is only missing comes last.</param>
/// <param name="Cautions">What not to do for a better photo.</param>
public sealed record PhotoAdvice(LetteringMeasures Measures, ImmutableArray<PhotoLimit> Limits, ImmutableArray<string> Cautions)
{
    /// <summary>Gets what limits the reading most; null where nothing does.</summary>
    public LimitKind? Worst => Limits.Where(limit => limit.Kind != LimitKind.NoScale).Select(limit => (LimitKind?)limit.Kind).FirstOrDefault();

    /// <summary>Tells whether something limits the photo.</summary>
    public bool Has(LimitKind kind) => Limits.Any(limit => limit.Kind == kind);
}
