namespace InscriptionLab.Evidence;

/// <summary>One answer that a question of years may have.</summary>
/// <param name="Years">The years that it tells of; open on both sides where it tells of none.</param>
/// <param name="Coverage">Share of pieces with this answer that fall within them.</param>
/// <param name="Weight">How much it counts beside the other answers, before the year is thought of.</param>
internal sealed record DateAnswer(DateInterval Years, double Coverage, double Weight = 1)
{
    /// <summary>Gives how well each year explains the answer, its weight included.</summary>
    internal double[] Likelihood()
    {
        var likelihood = YearWeights.Likelihood(Years, Coverage);
        for (var year = 0; year < likelihood.Length; year++)
        {
            likelihood[year] *= Weight;
        }

        return likelihood;
    }
}
