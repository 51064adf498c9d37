using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>What the photos of a piece gave together.</summary>
/// <param name="Working">True while they are being read together.</param>
/// <param name="Sets">The sets.</param>
/// <param name="Sentences">What else is to be said: why they could not be read together, or that they name several houses.</param>
internal sealed record JointAnswer(bool Working, ImmutableArray<SetAnswer> Sets, ImmutableArray<string> Sentences);
