using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Lines;
using InscriptionLab.Readings;
using InscriptionLab.Vision.Models;
using InscriptionLab.Vision.Native;

namespace InscriptionLab.Vision.Reading;

/// <summary>The first reader: a network trained on engraved lettering, letter by letter, without any word list or language model.</summary>
public sealed class EngravedReader : ILineReader
{
    private readonly EngravedNetwork _network;
    private readonly LetterDecoder _decoder;
    private readonly int _atOnce;

    /// <summary>Loads the reader.</summary>
    /// <param name="shelf">The models folder.</param>
    /// <param name="options">How frames become letters; null for the defaults.</param>
    /// <param name="atOnce">Most lines read at the same time.</param>
    /// <exception cref="Outcomes.InscriptionLabException">The model is absent, changed or of another shape.</exception>
    public EngravedReader(ModelShelf shelf, EngravedReaderOptions? options = null, int atOnce = 1)
    {
        System.ArgumentNullException.ThrowIfNull(shelf);
        System.ArgumentOutOfRangeException.ThrowIfNegativeOrZero(atOnce);
        _atOnce = atOnce;
        _network = new EngravedNetwork(shelf, atOnce);
        _decoder = new LetterDecoder(options ?? new EngravedReaderOptions());
        Name = $"engraved lettering reader {_network.Version}";
    }

    /// <inheritdoc/>
    public string Name { get; }

    /// <summary>Gets the network, for the stages that look without reading.</summary>
    internal EngravedNetwork Network => _network;

    /// <inheritdoc/>
    public void Dispose() => _network.Dispose();

    /// <inheritdoc/>
    public ImmutableArray<LineReading> Read(ImmutableArray<LetteringLine> lines, CancellationToken cancel)
    {
        var sights = _network.Look([.. lines.Select(line => line.Crop)], cancel);
        return [.. Read([.. lines.Zip(sights)], cancel)];
    }

    /// <summary>Reads what was already looked at.</summary>
    internal LineReading[] Read(IReadOnlyList<(LetteringLine Line, LineSight Sight)> seen, CancellationToken cancel) =>
        SideBySide.Map(seen, _atOnce, item => _decoder.Decode(item.Line, item.Sight), cancel);

    /// <summary>Reads what was already looked at.</summary>
    internal LineReading Read(LetteringLine line, LineSight sight) => _decoder.Decode(line, sight);
}
