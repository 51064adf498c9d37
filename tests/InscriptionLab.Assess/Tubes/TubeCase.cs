namespace InscriptionLab.Assess.Tubes;

/// <summary>One photo and the tube found in it.</summary>
/// <param name="File">The photo.</param>
/// <param name="HasTube">True where the truth knows a tube.</param>
/// <param name="Found">How many tubes were found.</param>
/// <param name="Place">Place of the tube that carries the lettering among those found, 1 for the likeliest; 0 where none does.</param>
/// <param name="Diameter">Relative error of its diameter at the lettering, above zero where it is too wide; not a number where there is none.</param>
/// <param name="Axis">Error of its axis, degrees; likewise.</param>
/// <param name="Unrolled">Root mean square error of the place along the arc over 45 degrees to either side, as a share of that arc; likewise.</param>
/// <param name="ByOutlines">The same error with the camera's true focal length: what the outlines alone cost; likewise.</param>
/// <param name="FocalTold">True where the file tells the focal length.</param>
/// <param name="Confidence">Its confidence; likewise.</param>
/// <param name="Seconds">Time of the search.</param>
internal sealed record TubeCase(string File, bool HasTube, int Found, int Place, double Diameter, double Axis, double Unrolled, double ByOutlines, bool FocalTold, double Confidence, double Seconds);
