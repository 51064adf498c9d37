namespace InscriptionLab.Comparison;

/// <summary>One step of an alignment.</summary>
/// <param name="Operation">What is laid over what.</param>
/// <param name="Place">Position in the window before the step.</param>
/// <param name="FormIndex">Index into the form before the step.</param>
internal readonly record struct AlignmentStep(AlignmentOperation Operation, int Place, int FormIndex);
