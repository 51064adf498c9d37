using InscriptionLab.Assess.Scores;

namespace InscriptionLab.Assess.Turns;

/// <summary>One set of photos of a turned tube, joined, beside the truth.</summary>
/// <param name="Set">Name of the set.</param>
/// <param name="Photos">Photos of the set.</param>
/// <param name="Joined">Photos that hang together in the strip; 0 where none was made.</param>
/// <param name="ShareSeen">Share of the circumference that is shown, 0 to 1.</param>
/// <param name="LargestStep">Largest error of a turn from one photo to the next, as a share of the circumference; not a number without a strip.</param>
/// <param name="Seam">Root mean square of the distances between the places of one true letter in two photos laid on the strip, as a share of the circumference; likewise.</param>
/// <param name="Meetings">Pairs of places that went into it.</param>
/// <param name="SaidSeam">The error that the program states for its seams, as a share of the circumference; likewise.</param>
/// <param name="Text">The joint reading against the whole inscription.</param>
internal sealed record TurnCase(string Set, int Photos, int Joined, double ShareSeen, double LargestStep, double Seam, int Meetings, double SaidSeam, TextScore Text);
