namespace InscriptionLab.Vision.Lines;

/// <summary>What one cell of the line detector's grid says; lengths are strip pixels.</summary>
/// <param name="X">Centre of the cell in the strip.</param>
/// <param name="Y">Centre of the cell in the strip.</param>
/// <param name="Core">Probability that the cell lies on the inner half of a line's height.</param>
/// <param name="Cosine">Reading direction.</param>
/// <param name="Sine">Reading direction.</param>
/// <param name="Top">From the cell to the ink top, square to the reading direction.</param>
/// <param name="Bottom">From the cell to the ink bottom.</param>
/// <param name="Before">From the cell back to the line's start.</param>
/// <param name="Behind">From the cell on to the line's end.</param>
internal readonly record struct LineCell(double X, double Y, double Core, double Cosine, double Sine, double Top, double Bottom, double Before, double Behind)
{
    /// <summary>Gives the same cell read in the opposite sense.</summary>
    internal LineCell Turned() => this with { Cosine = -Cosine, Sine = -Sine, Top = Bottom, Bottom = Top, Before = Behind, Behind = Before };
}
