namespace InscriptionLab.Gathering;

/// <summary>How deep the letters of a line lie in a relief.</summary>
/// <param name="Line">Index of the line in the reading.</param>
/// <param name="Depth">Middle depth of its letters, relative.</param>
/// <param name="Uncertainty">Standard error of that, from how the letters scatter.</param>
/// <param name="Letters">How many letters it rests on.</param>
public readonly record struct LineDepth(int Line, double Depth, double Uncertainty, int Letters);
