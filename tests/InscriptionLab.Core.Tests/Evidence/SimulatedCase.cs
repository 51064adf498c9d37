using System;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using InscriptionLab.Readings;

namespace InscriptionLab.Core.Tests.Evidence;

/// <summary>One simulated piece.</summary>
/// <param name="House">The house that it names.</param>
/// <param name="Truth">Who had it cut.</param>
/// <param name="Cut">The first line as cut.</param>
/// <param name="AllCut">All lines, a space between them.</param>
/// <param name="Year">The year in which it was cut.</param>
/// <param name="Reading">The reading.</param>
/// <param name="Finding">The finding.</param>
/// <param name="Report">The weighing.</param>
internal sealed record SimulatedCase(string House, Proposition Truth, string Cut, string AllCut, int Year, Reading Reading, Finding Finding, EvidenceReport Report)
{
    /// <summary>Gets the ratio of the house against the other two for somebody who knows the world and sees what is cut.</summary>
    internal double KnownCut { get; init; }

    /// <summary>Gets the same for somebody who knows the world and sees the name only as the reader states its letters.</summary>
    internal double KnownRead { get; init; }

    /// <summary>Gets the same ratio held back by the number of rows of the house, as the program's is.</summary>
    internal double KnownReadBounded => Math.Clamp(KnownRead, 1.0 / Math.Max(1, Report.Rows), Math.Max(1, Report.Rows));

    /// <summary>Gets the ratio of the house against the other two, each as likely as the other; 1 where nothing was weighed.</summary>
    internal double HouseAgainstOthers => Report.Ratios.IsEmpty
        ? 1
        : 2 / (Math.Pow(10, -Report.Ratios[0].Log10Ratio) + Math.Pow(10, -Report.Ratios[1].Log10Ratio));

    /// <summary>Gets a value indicating whether the first line is cut as the house spells itself.</summary>
    internal bool IsSpeltAsHouse => $"{Cut} ".StartsWith($"{House} ", StringComparison.OrdinalIgnoreCase);

    /// <summary>Gets a value indicating whether what is cut begins with what the list has as a mark of modern pieces.</summary>
    internal bool IsListedReproduction => AllCut.StartsWith($"{House} LONDON 1785", StringComparison.OrdinalIgnoreCase);
}
