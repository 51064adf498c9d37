namespace InscriptionLab.Cells;

/// <summary>One row of an uncertainty budget (GUM, JCGM 100:2008, clause 5.1).</summary>
/// <param name="Source">What is uncertain, in plain words.</param>
/// <param name="StandardUncertainty">Standard uncertainty of the input, zero or more, in the input's own unit.</param>
/// <param name="Unit">Unit of the input.</param>
/// <param name="Sensitivity">Change of the result for one unit of the input.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of the standard uncertainty, above zero; infinity where it is taken as known.</param>
/// <param name="Basis">Where the standard uncertainty comes from: readings of this photo, or an assumption with its source.</param>
public sealed record BudgetRow(
    string Source,
    double StandardUncertainty,
    string Unit,
    double Sensitivity,
    double DegreesOfFreedom,
    string Basis)
{
    /// <summary>Gets a value indicating whether another photo of the same thing brings another error: such rows are smaller in a mean of photos, the rest are not.</summary>
    public bool VariesByPhoto { get; init; }

    /// <summary>Gets the row's share of the combined standard uncertainty, in the result's unit.</summary>
    public double Contribution => System.Math.Abs(Sensitivity) * StandardUncertainty;
}
