namespace InscriptionLab.Advice;

/// <summary>A place of a line at which the photo is burnt out: it shows no metal there, so nothing cut there can be seen.</summary>
/// <param name="Line">Number of the line, from 0.</param>
/// <param name="Letter">Number of the letter in the line, spaces counted, from 0; the letter beside the place where <paramref name="Part"/> is no letter.</param>
/// <param name="Part">Which part of the line it is.</param>
/// <param name="Share">Share of the place that is burnt out, 0 to 1.</param>
public sealed record BurntPlace(int Line, int Letter, BurntPart Part, double Share);
