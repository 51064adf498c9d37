namespace InscriptionLab.Evidence;

/// <summary>One row of the checklist: one answer to one question on how a piece is made, with its years.</summary>
/// <param name="Feature">Name of the question, as the record of a piece gives it.</param>
/// <param name="Observation">The answer.</param>
/// <param name="Question">The question in words.</param>
/// <param name="Part">Part of the instrument that the answer dates.</param>
/// <param name="Years">Years of the answer; open on both sides where it tells of none.</param>
/// <param name="Coverage">Share of pieces with this answer that fall within the years, above 0 and at most 1.</param>
/// <param name="Basis">record, law, opinion or common practice.</param>
/// <param name="Source">What the years rest on.</param>
/// <param name="Remark">What the answer means beyond years; empty where nothing.</param>
public sealed record ConstructionFeature(
    string Feature,
    string Observation,
    string Question,
    string Part,
    DateInterval Years,
    double Coverage,
    string Basis,
    string Source,
    string Remark)
{
    /// <summary>Gets a value indicating whether the answer tells of years.</summary>
    public bool IsDated => Years.From is not null || Years.To is not null;
}
