namespace InscriptionLab.Page.Answers;

/// <summary>What a photo says of itself.</summary>
/// <param name="Sha256">SHA-256 of the file.</param>
/// <param name="Sharpness">Variance of the Laplacian.</param>
/// <param name="BurntFraction">Share of burnt-out pixels.</param>
/// <param name="BlackFraction">Share of black pixels.</param>
/// <param name="FocalLengthPx">Focal length in pixels; null where the photo is silent.</param>
internal sealed record FactsAnswer(string Sha256, double Sharpness, double BurntFraction, double BlackFraction, double? FocalLengthPx);
