namespace InscriptionLab.Evidence;

/// <summary>How probable an observation is under each proposition, up to a common factor.</summary>
/// <param name="Feature">What was looked at: spelling, style, address and so on.</param>
/// <param name="Observation">What was seen of it.</param>
/// <param name="House">Under <see cref="Proposition.House"/>, above zero.</param>
/// <param name="Period">Under <see cref="Proposition.PeriodOther"/>, above zero.</param>
/// <param name="Modern">Under <see cref="Proposition.Modern"/>, above zero.</param>
/// <param name="Basis">count where there are counts; choice; or opinion, for what single persons report.</param>
/// <param name="Source">What the numbers rest on.</param>
/// <param name="WouldChange">What would change the numbers, or the observation.</param>
public sealed record FeatureWeight(string Feature, string Observation, double House, double Period, double Modern, string Basis, string Source, string WouldChange)
{
    /// <summary>Gives the weight under a proposition.</summary>
    public double Under(Proposition proposition) => proposition switch
    {
        Proposition.House => House,
        Proposition.PeriodOther => Period,
        _ => Modern,
    };
}
