namespace InscriptionLab.App.Records;

/// <summary>Decimal logarithms of likelihood ratios between the propositions, two by two; above zero for the first.</summary>
/// <param name="HouseAgainstPeriod">House against another of its time.</param>
/// <param name="HouseAgainstModern">House against modern decorative piece.</param>
/// <param name="PeriodAgainstModern">Another of its time against modern decorative piece.</param>
/// <param name="Capped">True where a cap cut one of them off.</param>
internal sealed record RatiosRecord(double HouseAgainstPeriod, double HouseAgainstModern, double PeriodAgainstModern, bool Capped);
