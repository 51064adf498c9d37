using System;
using System.Collections.Immutable;
using System.Threading;
using InscriptionLab.Lines;
using InscriptionLab.Readings;

namespace InscriptionLab.Vision.Reading;

/// <summary>Reads lines of lettering letter by letter, as they are cut.</summary>
public interface ILineReader : IDisposable
{
    /// <summary>Gets name and version of the reader.</summary>
    string Name { get; }

    /// <summary>Reads lines.</summary>
    /// <param name="lines">Lines, upright for the reader.</param>
    /// <param name="cancel">Stops between lines.</param>
    /// <returns>One reading a line, in the same order; a line on which nothing is seen has no letters.</returns>
    ImmutableArray<LineReading> Read(ImmutableArray<LetteringLine> lines, CancellationToken cancel);
}
