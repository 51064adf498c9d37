namespace InscriptionLab.Assess.Sharpness;

/// <summary>A letter read in a photo of measured sharpness.</summary>
/// <param name="Photo">Number of the photo before it was blurred.</param>
/// <param name="Width">Width of the sharpest edges at half their height, over the height of the letters.</param>
/// <param name="Outlines">Distance over which the tube's outlines rise from 10 to 90 %, over the height of the letters; null where that was not measured.</param>
/// <param name="Stated">Probability that the reader gave the letter.</param>
/// <param name="Right">True where the letter is the one cut.</param>
internal sealed record SharpLetter(int Photo, double Width, double? Outlines, double Stated, bool Right);
