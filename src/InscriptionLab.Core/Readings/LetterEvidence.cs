using System.Collections.Immutable;

namespace InscriptionLab.Readings;

/// <summary>What the frames say of one letter of a spelling, the rest of the spelling taken as given.</summary>
/// <param name="Character">The letter of the spelling.</param>
/// <param name="Candidates">Everything that may stand at its place, itself included, most probable first; together 1. The empty string is "no letter here"; two letters stand for "two letters here".</param>
/// <param name="StartFrame">Expected first frame that shows the letter.</param>
/// <param name="CentreFrame">Mean of the frames that show it, weighted by how probably they do.</param>
/// <param name="EndFrame">Expected last frame that shows it.</param>
public sealed record LetterEvidence(string Character, ImmutableArray<LetterCandidate> Candidates, double StartFrame, double CentreFrame, double EndFrame);
