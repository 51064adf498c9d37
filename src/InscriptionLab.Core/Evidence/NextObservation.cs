using System.Globalization;

namespace InscriptionLab.Evidence;

/// <summary>Something that could still be looked at, and how much it would narrow the years.</summary>
/// <param name="Question">What to look at.</param>
/// <param name="YearsNow">Number of years that hold the coverage now.</param>
/// <param name="YearsExpected">Number to be expected after looking, each answer weighed by how probable it is in these years; where it may not be found, the years stay as they are.</param>
public sealed record NextObservation(string Question, int YearsNow, double YearsExpected)
{
    /// <summary>Gets it in a sentence.</summary>
    public string Sentence => string.Create(CultureInfo.InvariantCulture, $"What would narrow the years most: {Question} (from {YearsNow} years to {YearsExpected:0} on average).");
}
