namespace InscriptionLab.Vision.Turns;

/// <summary>How one picture of details fits another.</summary>
/// <param name="X">Columns to add to a point of the first picture.</param>
/// <param name="Y">Rows to add.</param>
/// <param name="Agreement">Correlation of the details there, -1 to 1.</param>
/// <param name="Clearness">How far it stands out: the correlation there over the scatter of all shifts' correlations, each by what it is taken over.</param>
internal sealed record DetailFit(double X, double Y, double Agreement, double Clearness);
