using System.Collections.Generic;
using InscriptionLab.Readings;

namespace InscriptionLab.Gathering;

/// <summary>One place of a joint line: a letter of the leading reading, or one that another reading adds, with what every reading says of it.</summary>
/// <param name="Letter">The letter whose box is kept.</param>
internal sealed record FusedPlace(Letter Letter)
{
    /// <summary>Gets one distribution a reading: candidates, the empty string for "no letter here", and their probabilities; and how much the reading counts.</summary>
    internal List<(Dictionary<string, double> Says, double Weight)> Votes { get; } = [];
}
