namespace InscriptionLab.Advice;

/// <summary>How bright the grooves of a line are beside its bare metal.</summary>
/// <param name="Line">Number of the line, from 0.</param>
/// <param name="OverMetal">Light of what stands out most, over that of the metal, less 1: below zero where grooves are dark.</param>
/// <param name="Uncertainty">Standard uncertainty, from the scatter of the line's pieces.</param>
public sealed record LineTone(int Line, double OverMetal, double Uncertainty);
