namespace InscriptionLab.Vision.Tubes;

/// <summary>A straight edge that runs nearly along the tube, in turned pixels.</summary>
/// <param name="Slope">Rows per column.</param>
/// <param name="Middle">Row at the middle of the turned picture's width.</param>
/// <param name="HalfWidth">Half the turned picture's width.</param>
/// <param name="First">First strip in which the edge shows.</param>
/// <param name="Last">Last strip in which the edge shows.</param>
/// <param name="Score">Evidence, summed over the strips and divided by their number; 0.65 is a clear edge from side to side.</param>
internal sealed record EdgeLine(double Slope, double Middle, double HalfWidth, int First, int Last, double Score)
{
    /// <summary>Gives the row of the edge at a column.</summary>
    internal double At(double x) => Middle + (Slope * (x - HalfWidth));
}
